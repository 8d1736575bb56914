#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace halfdrop {

/// A line of the mistakes catalogue as the contract (DEVELOPERS.md) prints it.
struct MistakeRow {
  std::string_view name, title, family;
  std::optional<std::string_view> cause;  ///< cause id
  std::string_view titre;                 ///< "high", "low", "either" or "none"
  double typical_cm3 = 0.0;
};

/// One JSON object on one line, without its line end: name, title, family, cause (or null), titre,
/// typical_cm3.
[[nodiscard]] std::string mistake_json(const MistakeRow& row);

}  // namespace halfdrop
