#pragma once
// Criteria that look at one run after another: the worst run is named, with its tick and its cost.

#include <span>

#include "game/level/say.h"
#include "game/marking/criteria.h"

namespace halfdrop {

/// One run of the sheet as a criterion sees it.
struct RunView {
  std::string name;
  const TitreRow* row = nullptr;
  const ReadingMoment* initial = nullptr;  ///< always there
  const ReadingMoment* final = nullptr;    ///< there when both were asked for, as are the next two
  const FlaskUse* flask = nullptr;
  const FlaskStory* story = nullptr;
  const TitreBreakdown* breakdown = nullptr;  ///< null when the paper says other than the moments

  [[nodiscard]] bool accurate() const { return name != "trial"; }
  [[nodiscard]] std::optional<double> cost(Cause cause) const;
};

/// Initial and final stand in each other's place on the sheet.
[[nodiscard]] bool readings_swapped(const RunView& run);
/// Final minus initial, as meant: readings in each other's place are paid for once.
[[nodiscard]] std::optional<double> titre_meant_cm3(const Case& marked, const TitreRow& row);

/// What one run did wrong.
struct Slip {
  double size = 0.0;  ///< the largest is the one that is reported
  std::string what;   ///< "the jet held 0.20 cm³ of air"
  Tick tick = 0;
  std::optional<double> cost_cm3;
};

enum class Needs { initial, both };
/// Where a click on a criterion that was met leads.
enum class Shown { initial, last_drop, final };

struct RunRule {
  Score score;
  const char* id;
  double of;
  Needs needs;
  Shown shown;
  bool accurate_only;
  Phrase right;  ///< what is seen when no run slipped
  Phrase advice;
  std::optional<Slip> (*check)(const Case&, const RunView&);
};

/// Runs that have what is needed and were truly measured, in the order of the sheet.
[[nodiscard]] std::vector<RunView> runs_to_check(const Case& marked, Needs needs, bool accurate_only);
[[nodiscard]] Finding judge(const Case& marked, const RunRule& rule);
/// Only when it happened.
void report_if(const Case& marked, const RunRule& rule, std::vector<Finding>& findings);
/// Accurate runs that count: the ticked ones with a breakdown, or all with one while none is ticked.
[[nodiscard]] std::vector<RunView> runs_that_count(const Case& marked);

/// A score by bands: |error| averaged over the runs that count.
struct BandRule {
  Score score;
  const char* id;
  Phrase what;  ///< "titrant past equivalence"
  Phrase advice;
  double (*error_cm3)(const RunView&);
  /// Why a run can earn none of these points, as half a sentence; null when every run can.
  std::optional<std::string> (*cannot)(const Case&, const RunView&) = nullptr;
};
[[nodiscard]] Finding judge_bands(const Case& marked, const BandRule& rule, std::span<const Band> bands);
/// Points for an error, whichever way it goes; 0 beyond the last band.
[[nodiscard]] int band_points(std::span<const Band> bands, double error_cm3);

}  // namespace halfdrop
