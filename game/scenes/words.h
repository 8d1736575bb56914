#pragma once
// Words of paper, eye view, marks page and level list, in one place.

#include <string>

#include "game/marking/titre_breakdown.h"

namespace halfdrop::words {

inline constexpr const char* kBuretteInHand = "The burette is in your hand";
inline constexpr const char* kMeniscusLower = "meniscus is lower \u2193";
inline constexpr const char* kMeniscusHigher = "meniscus is higher \u2191";

inline constexpr const char* kSheetHeading = "Burette / cm\u00b3";
inline constexpr const char* kSheetRun = "Run";
inline constexpr const char* kExample = "e.g.";
inline constexpr const char* kSheetExample = " \u00b7 F4 worked on other figures";
inline constexpr const char* kWorkedHeading = "The working, on other figures";
inline constexpr const char* kWithdrawn = "withdrawn: you have done this rightly before";
inline constexpr const char* kWorkedFoot =
    "A line is withdrawn each time you hand the working in with it right. F4 or a click puts this slip away.";
inline constexpr const char* kWorking = "working:";
inline constexpr const char* kWorkingMore = "write it \u2192";
inline constexpr const char* kSheetIdle = "R write \u00b7 T larger \u00b7 H hand in";
inline constexpr const char* kSheetForward = "click a cell, or R, to write \u00b7 T back to its place";
inline constexpr const char* kSheetEditing = "Enter writes it now \u00b7 Tab next \u00b7 Esc leaves it";
inline constexpr const char* kHandInQuestion = "Hand in? Nothing can be changed after.";
inline constexpr const char* kHandIn = "Hand in";
inline constexpr const char* kHandInKey = "Hand in (H)";
inline constexpr const char* kHandInLast = "Hand in? That is final.";
inline constexpr const char* kHandInShort = "Hand in?";
inline constexpr const char* kYes = "Yes (Y)";
inline constexpr const char* kNo = "No (N)";

inline constexpr const char* kRehearsal =
    "This is a rehearsal. It is no evidence of practical competence and replaces no risk assessment.";
inline constexpr const char* kRehearsalFirst =
    "This is rehearsal: your teacher's instructions and your local rules come first.\nIt is no evidence of "
    "practical competence and replaces no risk assessment.";

inline constexpr const char* kQuestion = "What went wrong, and which way did it push the titre?";
inline constexpr const char* kQuestionWhy =
    "Say it before you see it: 2 points for the cause, 1 for the way, beside the four marks and not in them.";
inline constexpr const char* kTooHigh = "Titre too high (+)";
inline constexpr const char* kTooLow = "Titre too low (\u2212)";
inline constexpr const char* kNothing = "Nothing went wrong (0)";
inline constexpr const char* kQuestionKeys = "Arrows choose, then + or \u2212; 0: nothing went wrong";

inline constexpr const char* kAgain = "Again, another seed (A)";
inline constexpr const char* kLevelList = "Level list (L)";
inline constexpr const char* kMarksKeys =
    "Wheel, Page Up and Page Down turn the page; a time shows that moment";
inline constexpr const char* kSafetyMet = "Safety: met";
inline constexpr const char* kSafetyNotMet = "Safety: not met. Until it is, nothing counts: the total is 0.";
inline constexpr const char* kSafetyNothing = "Nothing was handled: safety is not judged here.";
inline constexpr const char* kNextTime = "The one thing to change next time";
inline constexpr const char* kNothingToChange =
    "Nothing stands out that hands or eyes could mend. Do it just so again.";
inline constexpr const char* kBesideTheMarks = "Beside the four marks, not added to them.";
inline constexpr const char* kWhereTitre = "Where each titre came from";
inline constexpr const char* kWhereTitreWhy =
    "From the ideal titre to the one you recorded, in the order in which things happen. A bar that points to "
    "the "
    "right (+) raised the titre, one to the left (\u2212) lowered it.";
inline constexpr const char* kAnotherRun = "\u2190 \u2192 or a click: another run";
inline constexpr const char* kWhereResult = "And on to the result";
inline constexpr const char* kWhereResultWhy =
    "In per cent, 100 ln(reported/true), so that the parts add up: first what the titres that count brought, "
    "then "
    "your choice of runs and your working.";
inline constexpr const char* kWhereResultTurned =
    "In per cent, 100 ln(reported/true), so that the parts add up. Here a larger titre means a smaller "
    "result: "
    "what raised the titre points to the left.";
inline constexpr const char* kHowWell = "How well it is known";
inline constexpr const char* kHowWellWhy =
    "What your own readings and this glass leave open; a cause that works alike in every run is not in it.";
inline constexpr const char* kHarmless = "harmless";
inline constexpr const char* kHarmlessHeading = "Often taken for a fault, and none";
inline constexpr const char* kFindings = "What was seen";
inline constexpr const char* kMet = "met";
inline constexpr const char* kNotMet = "not met";

inline constexpr const char* kHandedIn = "Handed in";
inline constexpr const char* kFileToHandIn = "This file is your attempt. Give it to your teacher:";
inline constexpr const char* kInFolder = "in the folder";
inline constexpr const char* kTeacherReplays =
    "It holds everything you did and wrote, and is marked by replaying it. Do not change it: a replay shows "
    "that.";
inline constexpr const char* kNotWhole =
    "It could not be written to its end: the disk may be full. Tell your teacher before you close this "
    "window.";
inline constexpr const char* kSeeMarks = "See how it went (Enter)";

inline constexpr const char* kListSubtitle = "Burette technique, rehearsed";
inline constexpr const char* kListKeys = "Up and Down choose, Enter opens, Esc leaves";
inline constexpr const char* kDrills = "Drills, a minute or two each: one skill, with water";
inline constexpr const char* kWagers = "What others did: look through it, and bet";
inline constexpr const char* kUnfinished = "Not finished";
inline constexpr const char* kBefore = "Before you begin";
inline constexpr const char* kHazardSource =
    "Per cent by mass, by the limits of Regulation (EC) 1272/2008 (CLP), each substance for itself. The "
    "labels of "
    "your school and its supplier may say more.";
inline constexpr const char* kThreeWays = "How will you play it?";
inline constexpr const char* kThreeWaysKeys = "Arrows, or 1 to 3";
inline constexpr const char* kStart = "I have read this: start (Enter)";
inline constexpr const char* kBack = "Back (Esc)";

/// Causes of the titre breakdown in words of the bench, with a capital.
[[nodiscard]] const char* cause_name(Cause cause);
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
