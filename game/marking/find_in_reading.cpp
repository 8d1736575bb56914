// What the drill "read the meniscus" says of an eye.

#include <algorithm>
#include <cmath>

#include "game/marking/drill_marks.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "game/marking/written_number.h"

namespace halfdrop {

namespace {

/// A bias below this is seen by statistics and felt by nobody: a tenth of a division (our own choice).
constexpr double kBiasMatters_cm3 = 0.01;
constexpr const char* kLowestPoint = "Read the lowest point of the curve, not where it climbs the wall.";

struct Rule {
  Score score;
  const char* id;
  double of;
};

Finding start(const Rule& rule, const ReadingDrill& drill) {
  Finding finding{rule.score, rule.id, false, 0.0, rule.of, "", 0, std::nullopt, ""};
  for (const PictureRead& picture : drill.pictures) finding.tick = std::max(finding.tick, picture.tick);
  return finding;
}

/// All or nothing, with what to do when it is nothing.
Finding settled(Finding finding, bool met, const std::string& seen, const char* advice) {
  finding.met = met;
  finding.points = met ? finding.of : 0.0;
  finding.seen = seen;
  if (!met) finding.advice = advice;
  return finding;
}

std::string read_more() { return "Read at least " + std::to_string(kFewestValues) + " pictures."; }

std::string advice_for_few(const ReadingDrill& drill) {
  if (drill.read < kFewestValues) return read_more();
  return "The slips come first: mend those, then bias and spread can be seen.";
}

Finding too_few(Finding finding, const ReadingDrill& drill) {
  finding.judged = false;
  finding.advice = advice_for_few(drill);
  if (drill.read == 0) {
    finding.seen = "No reading was written.";
  } else if (drill.slips > 0) {
    finding.seen = "Only " + std::to_string(drill.errors.count) + " of " +
                   count_text(static_cast<std::size_t>(drill.read), "reading") +
                   " without a slip: too few to say more.";
  } else {
    finding.seen =
        "Only " + count_text(static_cast<std::size_t>(drill.read), "reading") + ": too few to say more.";
  }
  return finding;
}

std::string with_error(double cm3, double error_cm3) {
  return signed_cm3_text(cm3, 3) + " ± " + figure_text(error_cm3, 3);
}

/// Most figures lie nearer to the upper edge than to the lowest point, as the eye saw them.
bool reads_the_edge(const ReadingDrill& drill) {
  const auto at_the_edge = [](const PictureRead& picture) {
    return picture.read() && !picture.slip() &&
           std::fabs(*picture.written_cm3 - picture.apparent_edge_cm3) <
               std::fabs(*picture.written_cm3 - picture.apparent_cm3);
  };
  return 2 * std::count_if(drill.pictures.begin(), drill.pictures.end(), at_the_edge) > drill.errors.count;
}

Finding bias(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "no-bias", 2.0}, drill);
  const SampleStatistics& errors = drill.errors;
  if (errors.count < kFewestValues) return too_few(finding, drill);
  const std::string figure =
      with_error(errors.mean, errors.mean_error) + " (mean of written minus true, and its standard error)";
  if (std::fabs(errors.mean) <= kSeenErrors * errors.mean_error)
    return settled(finding, true, "No bias seen: " + figure + ".", "");
  if (std::fabs(errors.mean) < kBiasMatters_cm3)
    return settled(finding, true, "A bias is seen, too small to matter: " + figure + ".", "");
  finding.cost_cm3 = errors.mean;
  const bool high = errors.mean > 0.0;
  const std::string seen = std::string("Your eye reads ") + (high ? "high" : "low") + ": " + figure;
  if (reads_the_edge(drill))
    return settled(finding, false, seen + ". Your figures lie at the upper edge of the meniscus.",
                   kLowestPoint);
  return settled(
      finding, false, seen + ".",
      high ? "Look for the lowest point of the curve and for what lies above it: too high a figure "
             "comes from an eye that stays below the meniscus, or from rounding down the tube."
           : "Too low a figure comes from an eye that stays above the meniscus, from its upper edge, "
             "or from always taking the mark above.");
}

Finding steady(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "steady", 2.0}, drill);
  const SampleStatistics& errors = drill.errors;
  if (errors.count < kFewestValues) return too_few(finding, drill);
  const double trained = trained_sd_cm3(drill.to_cm3);
  std::string seen = "Spread (SD) " + cm3_text(errors.sd, 3) + " ± " + figure_text(errors.sd_error, 3) +
                     "; between trained readers it is " + figure_text(kTrainedSd_cm3, 3);
  if (drill.to_cm3 > 0.01)
    seen += ", " + figure_text(trained, 3) + " when written to " + figure_text(drill.to_cm3, 2);
  const double away = errors.sd - trained;
  if (std::fabs(away) <= kSeenErrors * errors.sd_error)
    return settled(finding, true, seen + ": no difference that can be told from chance.", "");
  return settled(
      finding, away < 0.0, seen + (away < 0.0 ? "; yours here is smaller." : "; yours is larger."),
      "Level eye, card just below the meniscus, and the same look each time: lowest point, nearest mark, "
      "nearest half division.");
}

Finding level_eye(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "eye-level", 2.0}, drill);
  if (drill.read == 0) return too_few(finding, drill);
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.off_level()) continue;
    finding.tick = picture.tick;
    break;
  }
  if (drill.off_level == 0) return settled(finding, true, "The eye was level at every reading.", "");
  finding.cost_cm3 = drill.off_level_cost_cm3;
  constexpr double kFew = 0.1;  // share of the readings; our own choice
  finding =
      settled(finding, false,
              "The eye was off level at " + std::to_string(drill.off_level) + " of " +
                  count_text(static_cast<std::size_t>(drill.read), "reading") + ", which cost " +
                  cm3_text(drill.off_level_cost_cm3, 3) + " each on average.",
              "Move your head until the far half of the nearest ring hides behind its near half, then read.");
  if (drill.off_level <= kFew * drill.read) finding.points = finding.of / 2.0;
  return finding;
}

Finding no_slips(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "no-slips", 1.0}, drill);
  if (drill.read == 0) return too_few(finding, drill);
  const auto first = std::find_if(drill.pictures.begin(), drill.pictures.end(),
                                  [](const PictureRead& picture) { return picture.slip(); });
  if (first == drill.pictures.end())
    return settled(finding, true, "No reading was off by more than " + cm3_text(kSlip_cm3) + ".", "");
  finding.tick = first->tick;
  finding.cost_cm3 = first->error_cm3();
  const std::string like = slip_looks_like(*first);
  return settled(finding, false,
                 count_text(static_cast<std::size_t>(drill.slips), "slip") +
                     ", left out of bias and spread; the "
                     "first at picture " +
                     std::to_string(first->number) + ": " + as_written(first->text) +
                     " where the meniscus stood at " + figure_text(first->true_cm3, 2) +
                     (like.empty() ? "" : " (" + like + ")") + ".",
                 like.find("upper edge") != std::string::npos
                     ? kLowestPoint
                     : "Find the numbered mark above the meniscus first, then count downwards from it.");
}

Finding bands(const ReadingDrill& drill, const Level& level) {
  const double of = level.eye_bands.empty() ? 0.0 : level.eye_bands.front().points;
  Finding finding = start({Score::eye, "reading-error", of}, drill);
  if (drill.read < kFewestValues) return too_few(finding, drill);
  finding.points = band_points(level.eye_bands, drill.mean_size_cm3);
  finding.met = finding.points == finding.of;
  finding.cost_cm3 = drill.mean_size_cm3;
  finding.seen = "Readings were off by " + cm3_text(drill.mean_size_cm3, 3) + " on average, either way.";
  if (!finding.met)
    finding.advice = drill.slips > 0
                         ? "The slips first; what is left of it is bias, spread and the eye's height."
                         : "See which part of it is bias, which is spread, and which is the eye's "
                           "height.";
  return finding;
}

Finding all_written(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "readings-written", 1.0}, drill);
  const std::size_t asked = drill.pictures.size();
  return settled(
      finding, drill.read == static_cast<int>(asked),
      std::to_string(drill.read) + " of " + count_text(asked, "picture") + " read.",
      "Write something for every picture: a reading you doubt says more about your eye than none.");
}

bool written_to(const std::string& text, double to_cm3) {
  return to_cm3 > 0.01 ? written_to_half_a_division(text) : decimals_written(text) == 2;
}

Finding decimals(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "half-divisions", 1.0}, drill);
  const char* const rule = drill.to_cm3 > 0.01 ? "two decimals, the second 0 or 5" : "two decimals";
  if (drill.read == 0) return too_few(finding, drill);
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.read() || written_to(picture.text, drill.to_cm3)) continue;
    finding.tick = picture.tick;
    return settled(finding, false,
                   "Picture " + std::to_string(picture.number) + " was written as " +
                       as_written(picture.text) + ": not " + rule + ".",
                   "A burette is read to half a division, 0.05 cm³, and 0.00 too has both decimals.");
  }
  return settled(finding, true, std::string("Every reading has ") + rule + ".", "");
}

std::string chance_text(double chance) {
  constexpr double kLeastTold = 0.001;
  if (chance < kLeastTold) return "a chance below 0.1 %";
  return "a chance of " + figure_text(100.0 * chance, 1) + " %";
}

Finding last_digit(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "last-figure", 1.0}, drill);
  int written = 0;
  for (const DigitCount& count : drill.digits) written += count.written;
  if (written < kFewestValues && drill.errors.count >= kFewestValues) {
    finding.judged = false;
    finding.seen = "Only " + count_text(static_cast<std::size_t>(written), "reading") +
                   " with a second decimal: too few to see a liking.";
    finding.advice = "Write both decimals each time.";
    return finding;
  }
  if (written < kFewestValues) return too_few(finding, drill);
  if (!drill.liked_digit)
    return settled(finding, true, "No last figure is liked better than the meniscus called for.", "");
  const DigitCount& liked = drill.digits[static_cast<std::size_t>(*drill.liked_digit)];
  const auto share = [&](int count) { return figure_text(100.0 * count / written, 0) + " %"; };
  return settled(
      finding, false,
      "You like a last " + std::to_string(*drill.liked_digit) + ": " + share(liked.written) +
          " of your readings end in it, " + share(liked.called_for) + " should (" +
          chance_text(drill.liked_chance) + " if no figure were liked).",
      "Decide the last figure by looking, not by liking: nearer to the mark, or nearer to the middle?");
}

}  // namespace

void find_in_reading(const ReadingDrill& drill, const Level& level, std::vector<Finding>& findings) {
  std::vector<Finding> eye = {bands(drill, level), bias(drill), steady(drill), level_eye(drill),
                              no_slips(drill)};
  append_findings(Score::eye, std::move(eye), findings, advice_for_few(drill));
  std::vector<Finding> record = {all_written(drill), decimals(drill), last_digit(drill)};
  append_findings(Score::record, std::move(record), findings, advice_for_few(drill));
}

}  // namespace halfdrop
