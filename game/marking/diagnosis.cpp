#include "game/marking/diagnosis.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/cause_titles.h"
#include "game/marking/counted_runs.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr double kAsGoodAsLargest = 0.8;

bool smaller(double a, double b) { return std::fabs(a) < std::fabs(b); }

std::string you_said(const Diagnosis& said) {
  if (!said.cause) return say("verdict.said_nothing") + " ";
  const std::string cause(cause_title(*said.cause));
  return (said.too_high ? say("verdict.said_high", {{"cause", cause}})
                        : say("verdict.said_low", {{"cause", cause}})) +
         " ";
}

std::string truth(const LargestCause& was) {
  const std::string cause(cause_title(was.cause, was.mean_cm3)), size = cm3_text(std::fabs(was.mean_cm3));
  return (was.mean_cm3 > 0.0 ? say("verdict.largest_up", {{"cause", cause}, {"size", size}})
                             : say("verdict.largest_down", {{"cause", cause}, {"size", size}})) +
         " ";
}

/// What the named cause did; nothing where it was worth less than a drop.
std::optional<double> named_cm3(const Diagnosis& said, const MarkedAttempt& marked) {
  const double mean_cm3 = mean_causes_cm3(counted_runs(marked.titres))[static_cast<std::size_t>(*said.cause)];
  return std::fabs(mean_cm3) < kOneDrop_cm3 ? std::nullopt : std::optional(mean_cm3);
}

}  // namespace

std::optional<LargestCause> largest_cause(const MarkedAttempt& marked) {
  const auto runs = counted_runs(marked.titres);
  if (runs.empty()) return std::nullopt;
  const auto means = mean_causes_cm3(runs);
  const auto most = std::max_element(means.begin(), means.end(), smaller);
  if (std::fabs(*most) < kOneDrop_cm3) return std::nullopt;
  return LargestCause{static_cast<Cause>(most - means.begin()), *most};
}

std::optional<DiagnosisPoints> diagnosis_points(const Diagnosis& said, const MarkedAttempt& marked) {
  if (counted_runs(marked.titres).empty()) return std::nullopt;
  const auto was = largest_cause(marked);
  if (!said.cause) return was ? DiagnosisPoints{} : DiagnosisPoints{kPointsForCause, kPointsForWay};
  if (!was) return DiagnosisPoints{};
  const auto named = named_cm3(said, marked);
  DiagnosisPoints points;
  if (named) {
    points.cause = std::fabs(*named) >= kAsGoodAsLargest * std::fabs(was->mean_cm3) ? kPointsForCause : 1;
  }
  points.way = said.too_high == (named.value_or(was->mean_cm3) > 0.0) ? kPointsForWay : 0;
  return points;
}

std::string verdict(const Diagnosis& said, const MarkedAttempt& marked) {
  const std::string own = you_said(said);
  if (counted_runs(marked.titres).empty()) return own + say("verdict.no_titre");
  const auto was = largest_cause(marked);
  if (!was) {
    return own + (said.cause ? say("verdict.no_slip") : say("verdict.no_slip_right"));
  }
  if (!said.cause) return own + truth(*was);
  const auto named = named_cm3(said, marked);
  const bool same = *said.cause == was->cause;
  const bool same_way = said.too_high == (named.value_or(was->mean_cm3) > 0.0);
  if (same) {
    return own + truth(*was) + (same_way ? say("verdict.cause_and_way") : say("verdict.cause_other_way"));
  }
  if (named) {
    return own + truth(*was) +
           (same_way ? say("verdict.yours_too", {{"size", signed_cm3_text(*named)}})
                     : say("verdict.yours_too_other_way", {{"size", signed_cm3_text(*named)}}));
  }
  return own + truth(*was) + (same_way ? say("verdict.other_cause") : say("verdict.other_cause_and_way"));
}

}  // namespace halfdrop
