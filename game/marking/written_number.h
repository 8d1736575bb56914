#pragma once
// The one reader of figures that people write: on the sheet, in the marks, on the command line.

#include <optional>
#include <string>
#include <string_view>

namespace halfdrop {

/// The figure alone as a machine writes it, its digits untouched: "24,50 cm³" gives "24.50", "2.355×10⁻³"
/// gives "2.355e-3". Takes a decimal point or comma, a power as "e-3", "x10^-3" or "×10⁻³", spaces around,
/// and a unit behind. Nothing for what cannot be read as one number.
[[nodiscard]] std::optional<std::string> plain_figure(std::string_view text);

/// Its value; nothing for what cannot be read as a number or is none a machine can hold.
[[nodiscard]] std::optional<double> number_written(std::string_view text);

/// A reading as the trade writes it: two decimals, the second 0 or 5 ("0.00", "21.65").
[[nodiscard]] bool written_to_half_a_division(std::string_view text);
/// Digits after the point, 0 without one ("2.15e-3" has 2).
[[nodiscard]] int decimals_written(std::string_view text);
/// Significant figures of a plain number; all digits of a whole number count ("2.150e-3" has 4, "0.0859" 3).
[[nodiscard]] int significant_figures(std::string_view text);
/// Half a unit of the last place written: 0.005 for "21.65".
[[nodiscard]] double half_unit_written(std::string_view text);

}  // namespace halfdrop
