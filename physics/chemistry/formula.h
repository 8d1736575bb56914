#pragma once
// Molar masses from formulas.

#include <optional>
#include <string>
#include <string_view>

namespace halfdrop {

/// g/mol of a formula such as "Ca(OH)2" or "Na2B4O7·10H2O": elements with counts, brackets, parts joined by
/// "·" with a number before them. Standard atomic weights, abridged (IUPAC 2021, from memory of it). Nothing
/// for a text that is no formula; `fault` then says why.
[[nodiscard]] std::optional<double> molar_mass_g_mol(std::string_view formula, std::string& fault);

}  // namespace halfdrop
