#pragma once
// Reads the keys of one JSON object, strictly: wrong types, values out of range, missing and unknown keys
// become faults at their JSON pointer. A value with a fault leaves its target as it was.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "game/level/strict_json.h"

namespace halfdrop {

enum class Need { required, optional };

struct NumberRange {
  double low = 0.0, high = 0.0;
};

class Fields {
 public:
  /// A fault when `value` is not an object; then nothing is found in it and nothing more is reported.
  /// `value` and `faults` must outlive the reader.
  Fields(const Json& value, std::string place, FaultList& faults);

  void number(std::string_view key, double& into, NumberRange range, Need need = Need::required);
  void whole(std::string_view key, int& into, int low, int high, Need need = Need::required);
  void whole(std::string_view key, std::int64_t& into, std::int64_t low, std::int64_t high,
             Need need = Need::required);
  /// 0 to 2^64 - 1.
  void whole(std::string_view key, std::uint64_t& into, Need need = Need::required);
  void flag(std::string_view key, bool& into, Need need = Need::required);
  /// A text of 1 to `most` characters; an empty one only if `may_be_empty`.
  void text(std::string_view key, std::string& into, std::size_t most, Need need = Need::required,
            bool may_be_empty = false);
  /// The array or object itself, for a closer look; null with a fault (or when optional and absent).
  const Json* array(std::string_view key, std::size_t least, std::size_t most, Need need = Need::required);
  const Json* object(std::string_view key, Need need = Need::required);
  /// Whatever stands there, unchecked; null when absent.
  const Json* any(std::string_view key);

  [[nodiscard]] bool has(std::string_view key) const;
  [[nodiscard]] std::string place_of(std::string_view key) const;
  void fault(std::string_view key, const std::string& message);
  /// Reports every key that was not asked for, with the nearest known one. Call last.
  void finish();

 private:
  const Json* find(std::string_view key) const;
  const Json* take(std::string_view key, Need need, std::string_view expected);
  [[nodiscard]] std::string unknown_key(std::string_view key) const;
  template <class T>
  void whole_between(std::string_view key, T& into, T low, T high, Need need);

  const Json* object_ = nullptr;
  std::string place_;
  FaultList& faults_;
  std::vector<std::string_view> known_;
};

/// Checks of values that are not members of an object, e.g. elements of an array. A fault when they fail.
[[nodiscard]] bool check_number(const Json& value, NumberRange range, const std::string& place,
                                FaultList& faults);
[[nodiscard]] bool check_text(const Json& value, std::size_t most, bool may_be_empty,
                              const std::string& place, FaultList& faults);

/// "a number", "a text", ... for messages.
[[nodiscard]] std::string type_in_words(const Json& value);
/// Shortest decimal that reads back the same: "0.05".
[[nodiscard]] std::string number_text(double value);
/// Characters of a UTF-8 text.
[[nodiscard]] std::size_t count_characters(std::string_view text);

}  // namespace halfdrop
