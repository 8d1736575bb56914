// What the drill "read the meniscus" says of an eye.

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/drill_marks.h"
#include "game/marking/per_run.h"
#include "game/marking/wording.h"
#include "game/marking/written_number.h"

namespace halfdrop {

namespace {

/// A bias below this is seen by statistics and felt by nobody: a tenth of a division (our own choice).
constexpr double kBiasMatters_cm3 = 0.01;
constexpr Phrase kLowestPoint{"drill.reading.advice.lowest"};

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
Finding settled(Finding finding, bool met, const std::string& seen, Phrase advice) {
  finding.met = met;
  finding.points = met ? finding.of : 0.0;
  finding.seen = seen;
  if (!met) finding.advice = advice;
  return finding;
}

std::string read_more() {
  return say("drill.reading.advice.more", {{"least", std::to_string(kFewestValues)}});
}

std::string advice_for_few(const ReadingDrill& drill) {
  if (drill.read < kFewestValues) return read_more();
  return say("drill.reading.advice.slips_first");
}

Finding too_few(Finding finding, const ReadingDrill& drill) {
  finding.judged = false;
  finding.advice = advice_for_few(drill);
  if (drill.read == 0) {
    finding.seen = say("drill.reading.none");
  } else if (drill.slips > 0) {
    finding.seen = say("drill.reading.few_without_slip",
                       {{"count", std::to_string(drill.errors.count)},
                        {"readings", count_text(static_cast<std::size_t>(drill.read), Counted::reading)}});
  } else {
    finding.seen = say("drill.reading.few",
                       {{"readings", count_text(static_cast<std::size_t>(drill.read), Counted::reading)}});
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
      say("drill.reading.bias", {{"bias", with_error(errors.mean, errors.mean_error)}});
  if (std::fabs(errors.mean) <= kSeenErrors * errors.mean_error)
    return settled(finding, true, say("drill.reading.no_bias", {{"bias", figure}}), {});
  if (std::fabs(errors.mean) < kBiasMatters_cm3)
    return settled(finding, true, say("drill.reading.small_bias", {{"bias", figure}}), {});
  finding.cost_cm3 = errors.mean;
  const bool high = errors.mean > 0.0;
  const std::string seen =
      high ? say("drill.reading.high", {{"bias", figure}}) : say("drill.reading.low", {{"bias", figure}});
  if (reads_the_edge(drill))
    return settled(finding, false, seen + " " + say("drill.reading.at_the_edge"), kLowestPoint);
  return settled(finding, false, seen,
                 high ? Phrase("drill.reading.advice.high") : Phrase("drill.reading.advice.low"));
}

Finding steady(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "steady", 2.0}, drill);
  const SampleStatistics& errors = drill.errors;
  if (errors.count < kFewestValues) return too_few(finding, drill);
  const double trained = trained_sd_cm3(drill.to_cm3);
  const std::string sd = cm3_text(errors.sd, 3), error = figure_text(errors.sd_error, 3),
                    of_trained = figure_text(kTrainedSd_cm3, 3);
  const std::string seen =
      drill.to_cm3 > 0.01
          ? say("drill.reading.spread_to", {{"sd", sd},
                                            {"error", error},
                                            {"trained", of_trained},
                                            {"trained_to", figure_text(trained, 3)},
                                            {"to", figure_text(drill.to_cm3, 2)}})
          : say("drill.reading.spread", {{"sd", sd}, {"error", error}, {"trained", of_trained}});
  const double away = errors.sd - trained;
  if (std::fabs(away) <= kSeenErrors * errors.sd_error)
    return settled(finding, true, say("drill.reading.spread.chance", {{"spread", seen}}), {});
  return settled(finding, away < 0.0,
                 away < 0.0 ? say("drill.reading.spread.smaller", {{"spread", seen}})
                            : say("drill.reading.spread.larger", {{"spread", seen}}),
                 "drill.reading.advice.steady");
}

Finding level_eye(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "eye-level", 2.0}, drill);
  if (drill.read == 0) return too_few(finding, drill);
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.off_level()) continue;
    finding.tick = picture.tick;
    break;
  }
  if (drill.off_level == 0) return settled(finding, true, say("drill.reading.level"), {});
  finding.cost_cm3 = drill.off_level_cost_cm3;
  constexpr double kFew = 0.1;  // share of the readings; our own choice
  finding = settled(finding, false,
                    say("drill.reading.off_level",
                        {{"count", std::to_string(drill.off_level)},
                         {"readings", count_text(static_cast<std::size_t>(drill.read), Counted::reading)},
                         {"cost", cm3_text(drill.off_level_cost_cm3, 3)}}),
                    "drill.reading.advice.level");
  if (drill.off_level <= kFew * drill.read) finding.points = finding.of / 2.0;
  return finding;
}

Finding no_slips(const ReadingDrill& drill) {
  Finding finding = start({Score::eye, "no-slips", 1.0}, drill);
  if (drill.read == 0) return too_few(finding, drill);
  const auto first = std::find_if(drill.pictures.begin(), drill.pictures.end(),
                                  [](const PictureRead& picture) { return picture.slip(); });
  if (first == drill.pictures.end())
    return settled(finding, true, say("drill.reading.no_slip", {{"size", cm3_text(kSlip_cm3)}}), {});
  finding.tick = first->tick;
  finding.cost_cm3 = first->error_cm3();
  const std::string like = slip_looks_like(*first);
  const std::string first_seen = say("drill.reading.slip", {{"number", std::to_string(first->number)},
                                                            {"text", as_written(first->text)},
                                                            {"true", figure_text(first->true_cm3, 2)}});
  const std::string seen =
      say("drill.reading.slips", {{"slips", count_text(static_cast<std::size_t>(drill.slips), Counted::slip)},
                                  {"first", first_seen},
                                  {"like", like.empty() ? "" : " (" + like + ")"}});
  return settled(finding, false, seen,
                 like == say("drill.reading.slip.edge") ? kLowestPoint : Phrase("drill.reading.advice.slip"));
}

Finding bands(const ReadingDrill& drill, const Level& level) {
  const double of = level.eye_bands.empty() ? 0.0 : level.eye_bands.front().points;
  Finding finding = start({Score::eye, "reading-error", of}, drill);
  if (drill.read < kFewestValues) return too_few(finding, drill);
  finding.points = band_points(level.eye_bands, drill.mean_size_cm3);
  finding.met = finding.points == finding.of;
  finding.cost_cm3 = drill.mean_size_cm3;
  finding.seen = say("drill.reading.off", {{"size", cm3_text(drill.mean_size_cm3, 3)}});
  if (!finding.met)
    finding.advice =
        drill.slips > 0 ? say("drill.reading.advice.off_slips") : say("drill.reading.advice.off");
  return finding;
}

Finding all_written(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "readings-written", 1.0}, drill);
  const std::size_t asked = drill.pictures.size();
  return settled(finding, drill.read == static_cast<int>(asked),
                 say("drill.reading.written", {{"count", std::to_string(drill.read)},
                                               {"pictures", count_text(asked, Counted::picture)}}),
                 "drill.reading.advice.written");
}

bool written_to(const std::string& text, double to_cm3) {
  return to_cm3 > 0.01 ? written_to_half_a_division(text) : decimals_written(text) == 2;
}

Finding decimals(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "half-divisions", 1.0}, drill);
  const std::string& rule =
      drill.to_cm3 > 0.01 ? say("drill.reading.decimals_0_05") : say("drill.reading.decimals_0_01");
  if (drill.read == 0) return too_few(finding, drill);
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.read() || written_to(picture.text, drill.to_cm3)) continue;
    finding.tick = picture.tick;
    return settled(
        finding, false,
        say("drill.reading.not_decimals",
            {{"number", std::to_string(picture.number)}, {"text", as_written(picture.text)}, {"rule", rule}}),
        "drill.reading.advice.decimals");
  }
  return settled(finding, true, say("drill.reading.decimals", {{"rule", rule}}), {});
}

std::string chance_text(double chance) {
  constexpr double kLeastTold = 0.001;
  if (chance < kLeastTold) return say("drill.reading.chance_below");
  return say("drill.reading.chance", {{"percent", figure_text(100.0 * chance, 1)}});
}

Finding last_digit(const ReadingDrill& drill) {
  Finding finding = start({Score::record, "last-figure", 1.0}, drill);
  int written = 0;
  for (const DigitCount& count : drill.digits) written += count.written;
  if (written < kFewestValues && drill.errors.count >= kFewestValues) {
    finding.judged = false;
    finding.seen = say("drill.reading.few_decimals",
                       {{"readings", count_text(static_cast<std::size_t>(written), Counted::reading)}});
    finding.advice = say("drill.reading.advice.both_decimals");
    return finding;
  }
  if (written < kFewestValues) return too_few(finding, drill);
  if (!drill.liked_digit) return settled(finding, true, say("drill.reading.no_liking"), {});
  const DigitCount& liked = drill.digits[static_cast<std::size_t>(*drill.liked_digit)];
  const auto share = [&](int count) { return figure_text(100.0 * count / written, 0) + " %"; };
  return settled(finding, false,
                 say("drill.reading.liking", {{"digit", std::to_string(*drill.liked_digit)},
                                              {"written", share(liked.written)},
                                              {"called_for", share(liked.called_for)},
                                              {"chance", chance_text(drill.liked_chance)}}),
                 "drill.reading.advice.liking");
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
