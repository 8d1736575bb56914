#pragma once
// Figures and names as findings say them.

#include <string>

#include "game/level/say.h"

namespace halfdrop {

/// "0.08 cm³"; never "-0.00".
[[nodiscard]] std::string cm3_text(double cm3, int decimals = 2);
/// "+0.08 cm³", "−0.08 cm³", "0.00 cm³".
[[nodiscard]] std::string signed_cm3_text(double cm3, int decimals = 2);
/// A plain figure with so many decimals.
[[nodiscard]] std::string figure_text(double value, int decimals);
/// So many significant figures, as a calculator shows them: "2.147e-03", "0.0859".
[[nodiscard]] std::string significant_text(double value, int figures);
/// Figures of an uncertainty: more say nothing (JCGM 100:2008, 7.2.6).
inline constexpr int kUncertaintyFigures = 2;
/// A value to the place of its uncertainty's second figure: 0.8612 with 0.0068.
[[nodiscard]] std::string rounded_like(double value, double uncertainty);
/// What somebody wrote, as it was written: “47,75”.
[[nodiscard]] std::string as_written(const std::string& text);
/// Without a binary tail, to 12 significant figures: 23.549999999999997 becomes 23.55.
[[nodiscard]] double tidy(double value);
/// "trial" becomes "trial run", "2" becomes "run 2".
[[nodiscard]] std::string run_text(const std::string& run);
/// First letter large. ASCII and à to þ.
[[nodiscard]] std::string sentence(std::string text);
/// What findings count.
enum class Counted { run, aliquot, reading, titre, figure, slip, picture };
/// "1 run", "3 runs".
[[nodiscard]] std::string count_text(std::size_t count, Counted what);

}  // namespace halfdrop
