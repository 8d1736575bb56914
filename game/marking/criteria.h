#pragma once
// The criteria: each one a small function from what happened and what was written to a finding. Points are
// our own choice; bands come from the level.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "game/marking/calculation.h"
#include "game/marking/evidence.h"
#include "game/marking/marks.h"
#include "game/marking/results_sheet.h"

namespace halfdrop {

/// Everything a criterion may look at.
struct Case {
  const Session& session;  ///< as it stood at the end
  const Evidence& evidence;
  const ResultsSheet& sheet;
  const std::map<std::string, RunReadings>& readings;
  const std::vector<TitreRow>& titres;
  const Level* as_recorded = nullptr;  ///< with the standard as it was weighed; null: the session's

  [[nodiscard]] const Level& level() const { return as_recorded ? *as_recorded : session.level(); }
  [[nodiscard]] Tick end() const { return session.state().tick; }
};

using Criterion = Finding (*)(const Case&);

/// So many criteria that could not be judged are said as one.
inline constexpr std::ptrdiff_t kSaidOnce = 3;

/// Appends a score's findings; several that could not be judged become one, with their points, and with that
/// advice in place of what is said of a titration.
void append_findings(Score score, std::vector<Finding> of_score, std::vector<Finding>& findings,
                     std::string_view advice = {});
/// Why a run's figures were never read off this bench; nothing when they may have been.
[[nodiscard]] std::optional<std::string> never_measured(const Case& marked, const std::string& run);

/// Appends this score's findings.
void mark_safety(const Case& marked, std::vector<Finding>& findings);
/// Of a level that asks for it: whether the burette's top was below eye level whenever it was filled.
[[nodiscard]] Finding filled_below_eye(const Evidence& evidence, Tick end);
void mark_hand(const Case& marked, std::vector<Finding>& findings);
/// A part of the hand: whether burette and pipette were rinsed, and the pipette's last drop.
void mark_rinsing(const Case& marked, std::vector<Finding>& hand);
/// A part of the hand, where the pipette is worked by hand: its line, its outside, its draining.
void mark_pipette(const Case& marked, std::vector<Finding>& hand);
/// A part of the hand, where a standard is made up: washings, line, turning over.
void mark_standard(const Case& marked, std::vector<Finding>& hand);
/// ... and of the record: its weighings.
void mark_weighing(const Case& marked, std::vector<Finding>& record);
/// A part of the hand: how runs came to their ends.
void mark_endpoint(const Case& marked, std::vector<Finding>& hand);
/// A part of the hand: the first of two endpoints, and the second indicator.
void mark_first_endpoint(const Case& marked, std::vector<Finding>& hand);
void mark_eye(const Case& marked, std::vector<Finding>& findings);
void mark_record(const Case& marked, std::vector<Finding>& findings);
void mark_arithmetic(const Case& marked, std::vector<Finding>& findings);
/// What occurred and is often taken for a fault, though it costs nothing (of == 0, met).
void mark_harmless(const Case& marked, std::vector<Finding>& findings);

/// A ticked run's titre in the player's own figures: the one that is written, else final minus initial;
/// nothing for a run that does not count.
[[nodiscard]] std::optional<double> own_titre_cm3(const TitreRow& row);
/// Mean of the ticked titres in the player's own figures (written titre, or final minus initial where none is
/// written).
[[nodiscard]] std::optional<double> own_mean_cm3(const std::vector<TitreRow>& titres);

/// The same of the first of two endpoints.
[[nodiscard]] std::optional<double> own_first_titre_cm3(const TitreRow& row);
[[nodiscard]] std::optional<double> own_first_mean_cm3(const std::vector<TitreRow>& titres);

/// Two figures written to 0.01 count as equal within this.
inline constexpr double kSameFigure_cm3 = 1e-6;
/// Parallax that still counts as a level eye, cm3: a fifth of a division (our own choice).
inline constexpr double kLevelEye_cm3 = 0.02;
/// Less air than this in the jet, or less hanging liquid, cannot be seen (our own choice).
inline constexpr double kSeenInJet_cm3 = 0.002;
inline constexpr double kSeenHanging_cm3 = 0.01;
/// Titres agree within 0.10 cm3 (common practice; practice of boards).
inline constexpr double kConcordant_cm3 = 0.10;

}  // namespace halfdrop
