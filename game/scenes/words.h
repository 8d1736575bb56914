#pragma once
// Words of paper, eye view, marks page and level list, in one place; and figures as the window prints them.

#include <string>

#include "game/level/say.h"
#include "game/marking/titre_breakdown.h"

namespace halfdrop::words {

inline constexpr Phrase kBuretteInHand{"eye.burette_in_hand"};
inline constexpr Phrase kMeniscusLower{"eye.meniscus_lower"};
inline constexpr Phrase kMeniscusHigher{"eye.meniscus_higher"};

inline constexpr Phrase kSheetHeading{"sheet.heading"};
inline constexpr Phrase kSheetRun{"sheet.run"};
inline constexpr Phrase kExample{"sheet.example"};
inline constexpr Phrase kSheetExample{"sheet.foot.example"};
inline constexpr Phrase kWorkedHeading{"worked.heading"};
inline constexpr Phrase kWithdrawn{"worked.withdrawn"};
inline constexpr Phrase kWorkedFoot{"worked.foot"};

inline constexpr Phrase kWorkingMore{"sheet.working.more"};
inline constexpr Phrase kSheetIdle{"sheet.foot.idle"};
inline constexpr Phrase kSheetForward{"sheet.foot.forward"};
inline constexpr Phrase kSheetEditing{"sheet.foot.editing"};
inline constexpr Phrase kHandInQuestion{"sheet.hand_in.question"};
inline constexpr Phrase kHandIn{"sheet.hand_in"};
inline constexpr Phrase kHandInKey{"sheet.hand_in.with_key"};
inline constexpr Phrase kHandInLast{"sheet.hand_in.last"};
inline constexpr Phrase kHandInShort{"sheet.hand_in.short"};
inline constexpr Phrase kYes{"sheet.yes"};
inline constexpr Phrase kNo{"sheet.no"};

inline constexpr Phrase kRehearsal{"app.rehearsal"};
inline constexpr Phrase kRehearsalFirst{"safety.rehearsal"};

inline constexpr Phrase kQuestion{"question.heading"};
inline constexpr Phrase kQuestionWhy{"question.why"};
inline constexpr Phrase kTooHigh{"question.too_high"};
inline constexpr Phrase kTooLow{"question.too_low"};
inline constexpr Phrase kNothing{"question.nothing"};
inline constexpr Phrase kQuestionKeys{"question.keys"};

inline constexpr Phrase kAgain{"marks.again"};
inline constexpr Phrase kLevelList{"marks.level_list"};
inline constexpr Phrase kMarksKeys{"marks.keys"};
inline constexpr Phrase kSafetyMet{"marks.safety.met"};
inline constexpr Phrase kSafetyNotMet{"marks.safety.not_met"};
inline constexpr Phrase kSafetyNothing{"marks.safety.nothing"};
inline constexpr Phrase kNextTime{"marks.next.heading"};
inline constexpr Phrase kNothingToChange{"marks.next.nothing"};
inline constexpr Phrase kBesideTheMarks{"marks.beside"};
inline constexpr Phrase kWhereTitre{"marks.titres.heading"};
inline constexpr Phrase kWhereTitreWhy{"marks.titres.why"};
inline constexpr Phrase kAnotherRun{"marks.titres.another_run"};
inline constexpr Phrase kWhereResult{"marks.result.heading"};
inline constexpr Phrase kWhereResultWhy{"marks.result.why"};
inline constexpr Phrase kWhereResultTurned{"marks.result.why_turned"};
inline constexpr Phrase kHowWell{"marks.uncertainty.heading"};
inline constexpr Phrase kHowWellWhy{"marks.uncertainty.why"};
inline constexpr Phrase kHarmless{"marks.finding.harmless"};
inline constexpr Phrase kHarmlessHeading{"marks.harmless.heading"};
inline constexpr Phrase kFindings{"marks.findings.heading"};
inline constexpr Phrase kMet{"marks.finding.met"};
inline constexpr Phrase kNotMet{"marks.finding.not_met"};

inline constexpr Phrase kHandedIn{"handed_in.heading"};
inline constexpr Phrase kFileToHandIn{"handed_in.file"};
inline constexpr Phrase kInFolder{"handed_in.folder"};
inline constexpr Phrase kTeacherReplays{"handed_in.replays"};
inline constexpr Phrase kNotWhole{"handed_in.not_whole"};
inline constexpr Phrase kSeeMarks{"handed_in.go_on"};

inline constexpr Phrase kListSubtitle{"list.subtitle"};
inline constexpr Phrase kListKeys{"list.keys"};
inline constexpr Phrase kDrills{"list.drills"};
inline constexpr Phrase kWagers{"list.wagers"};
inline constexpr Phrase kUnfinished{"list.unfinished"};
inline constexpr Phrase kBefore{"safety.before"};
inline constexpr Phrase kHazardSource{"safety.source"};
inline constexpr Phrase kThreeWays{"safety.ways"};
inline constexpr Phrase kThreeWaysKeys{"safety.ways.keys"};
inline constexpr Phrase kStart{"safety.start"};
inline constexpr Phrase kBack{"safety.back"};

/// Causes of the titre breakdown in words of the bench, with a capital.
[[nodiscard]] std::string_view cause_name(Cause cause);
/// "21.40"; a true minus sign.
[[nodiscard]] std::string fixed(double value, int decimals);
/// "+0.05", "-0.12" with a true minus, "0.00" without a sign.
[[nodiscard]] std::string with_sign(double value, int decimals);
/// A part of a titre: "+0.123 cm³", below 0.01 in microlitres: "+4 µL".
[[nodiscard]] std::string volume_with_sign(double cm3);
/// With so many significant figures: "0.09412".
[[nodiscard]] std::string figures(double value, int significant);
/// Points, with a half where there is one: "7", "2.5".
[[nodiscard]] std::string points(double value);
/// Minutes and seconds of a tick: "3:07".
[[nodiscard]] std::string clock(Tick tick);

}  // namespace halfdrop::words
