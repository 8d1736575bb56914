#pragma once
// Strict JSON: what RFC 8259 allows and no more. Doubled keys, deep nesting and huge files are faults.
// Reading and writing are compiled here once; Json's own parse and dump cost seconds in each file that calls
// them.

#include <optional>
#include <string>
#include <string_view>

#include <nlohmann/json_fwd.hpp>

#include "game/level/fault_list.h"

namespace halfdrop {

/// Keeps keys in the order of the text.
using Json = nlohmann::ordered_json;

inline constexpr int kDeepestNesting = 32;

/// Reads a whole file. A fault when it cannot be opened, is a folder, or is longer than `most_bytes`.
[[nodiscard]] tl::expected<std::string, Fault> read_file(const std::string& path, std::size_t most_bytes);

/// Where a syntax fault is said to be: "line 3" of the text, or a place that stands for the whole text.
struct TextPlace {
  std::string syntax;   ///< empty: the line is counted
  std::string pointer;  ///< put before the JSON pointer of a doubled key
};

/// Parses one JSON text. Nothing (and a fault) when it is not JSON or nested deeper than kDeepestNesting. A
/// doubled key is a fault of kind invalid; of the two values the first is found under the key.
[[nodiscard]] std::optional<Json> parse_json(std::string_view text, const TextPlace& place,
                                             FaultList& faults);

/// On one line. Bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string json_text(const Json& json);

/// The text as JSON can hold it: bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string valid_utf8(const std::string& text);

/// `pointer` with one more step, escaped as in RFC 6901.
[[nodiscard]] std::string pointer_to(const std::string& pointer, std::string_view key);
[[nodiscard]] std::string pointer_to(const std::string& pointer, std::size_t index);

/// A key or text of a file in quotation marks, cut to a length that can be read.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace halfdrop
