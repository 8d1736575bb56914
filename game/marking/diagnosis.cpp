#include "game/marking/diagnosis.h"

#include <algorithm>
#include <cmath>

#include "game/marking/cause_titles.h"
#include "game/marking/counted_runs.h"
#include "game/marking/wording.h"

namespace halfdrop {

namespace {

constexpr double kAsGoodAsLargest = 0.8;

bool smaller(double a, double b) { return std::fabs(a) < std::fabs(b); }

std::string you_said(const Diagnosis& said) {
  if (!said.cause) return "You said: nothing went wrong. ";
  return "You said: " + std::string(cause_title(*said.cause)) +
         (said.too_high ? ", titre too high. " : ", titre too low. ");
}

std::string truth(const LargestCause& was) {
  return "The largest cause was: " + std::string(cause_title(was.cause, was.mean_cm3)) +
         ". It pushed the titre " + (was.mean_cm3 > 0.0 ? "up" : "down") + " by " +
         cm3_text(std::fabs(was.mean_cm3)) + ", on average over the runs that count. ";
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
  if (counted_runs(marked.titres).empty()) return own + "There is no accurate titre to judge that by.";
  const auto was = largest_cause(marked);
  if (!was) {
    return own + "No cause moved the titres that count by a drop (0.05 cm³) or more" +
           (said.cause ? ": no slip shows in them." : ": about the titres you were right.");
  }
  if (!said.cause) return own + truth(*was);
  const auto named = named_cm3(said, marked);
  const bool same = *said.cause == was->cause;
  const bool same_way = said.too_high == (named.value_or(was->mean_cm3) > 0.0);
  if (same) {
    return own + truth(*was) +
           (same_way ? "You saw the cause and its way." : "You saw the cause; it pushed the other way.");
  }
  if (named) {
    return own + truth(*was) + "Yours was there too: " + signed_cm3_text(*named) +
           (same_way ? ", the way you said." : ", the other way.");
  }
  return own + truth(*was) +
         (same_way ? "Another cause, but the way is right." : "Another cause, and the other way.");
}

}  // namespace halfdrop
