#include "game/level/fields.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <nlohmann/json.hpp>

#include "game/level/nearest.h"

namespace halfdrop {

Fields::Fields(const Json& value, std::string place, FaultList& faults)
    : place_(std::move(place)), faults_(faults) {
  if (value.is_object())
    object_ = &value;
  else
    faults_.add(place_, "expected an object, found " + type_in_words(value));
}

const Json* Fields::find(std::string_view key) const {
  if (object_ == nullptr) return nullptr;
  const auto& members = *object_->get_ptr<const Json::object_t*>();
  const auto member =
      std::find_if(members.begin(), members.end(), [&](const auto& m) { return m.first == key; });
  return member == members.end() ? nullptr : &member->second;
}

bool Fields::has(std::string_view key) const { return find(key) != nullptr; }

std::string Fields::place_of(std::string_view key) const { return pointer_to(place_, key); }

void Fields::fault(std::string_view key, const std::string& message) { faults_.add(place_of(key), message); }

const Json* Fields::take(std::string_view key, Need need, std::string_view expected) {
  known_.push_back(key);
  const Json* const value = find(key);
  if (value == nullptr && object_ != nullptr && need == Need::required)
    fault(key, "missing: expected " + std::string(expected));
  return value;
}

const Json* Fields::any(std::string_view key) { return take(key, Need::optional, ""); }

void Fields::number(std::string_view key, double& into, NumberRange range, Need need) {
  const Json* const value = take(key, need, "a number");
  if (value != nullptr && check_number(*value, range, place_of(key), faults_)) into = value->get<double>();
}

template <class T>
void Fields::whole_between(std::string_view key, T& into, T low, T high, Need need) {
  const Json* const value = take(key, need, "a whole number");
  if (value == nullptr) return;
  const auto in_range = [&](auto v) { return std::cmp_less_equal(low, v) && std::cmp_less_equal(v, high); };
  const bool good = value->is_number_unsigned()  ? in_range(value->get<std::uint64_t>())
                    : value->is_number_integer() ? in_range(value->get<std::int64_t>())
                                                 : false;
  if (good) {
    into = value->get<T>();
    return;
  }
  const std::string found = value->is_number() ? json_text(*value) : type_in_words(*value);
  fault(key, "expected a whole number from " + std::to_string(low) + " to " + std::to_string(high) +
                 ", found " + found);
}

void Fields::whole(std::string_view key, int& into, int low, int high, Need need) {
  whole_between(key, into, low, high, need);
}

void Fields::whole(std::string_view key, std::int64_t& into, std::int64_t low, std::int64_t high, Need need) {
  whole_between(key, into, low, high, need);
}

void Fields::whole(std::string_view key, std::uint64_t& into, Need need) {
  whole_between(key, into, std::uint64_t{0}, std::numeric_limits<std::uint64_t>::max(), need);
}

void Fields::flag(std::string_view key, bool& into, Need need) {
  const Json* const value = take(key, need, "true or false");
  if (value == nullptr) return;
  if (value->is_boolean())
    into = value->get<bool>();
  else
    fault(key, "expected true or false, found " + type_in_words(*value));
}

void Fields::text(std::string_view key, std::string& into, std::size_t most, Need need, bool may_be_empty) {
  const Json* const value = take(key, need, "a text");
  if (value != nullptr && check_text(*value, most, may_be_empty, place_of(key), faults_))
    into = value->get_ref<const std::string&>();
}

const Json* Fields::array(std::string_view key, std::size_t least, std::size_t most, Need need) {
  const Json* const value = take(key, need, "an array");
  if (value == nullptr) return nullptr;
  if (value->is_array() && value->size() >= least && value->size() <= most) return value;
  const std::string found = value->is_array() ? std::to_string(value->size()) : type_in_words(*value);
  const std::string count =
      least == most ? std::to_string(least) : std::to_string(least) + " to " + std::to_string(most);
  fault(key, "expected an array of " + count + ", found " + found);
  return nullptr;
}

const Json* Fields::object(std::string_view key, Need need) {
  const Json* const value = take(key, need, "an object");
  if (value == nullptr || value->is_object()) return value;
  fault(key, "expected an object, found " + type_in_words(*value));
  return nullptr;
}

void Fields::finish() {
  if (object_ == nullptr) return;
  const auto& members = *object_->get_ptr<const Json::object_t*>();
  for (const auto& member : members) {
    const std::string& key = member.first;
    if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
    fault(key, faults_.full() ? "" : unknown_key(key));
  }
}

std::string Fields::unknown_key(std::string_view key) const {
  std::string message = "unknown key " + in_quotes(key) + did_you_mean(key, known_);
  if (!nearest(key, known_).empty()) return message;
  message += "; known here: ";
  for (std::size_t i = 0; i < known_.size(); ++i) message.append(i == 0 ? "" : ", ").append(known_[i]);
  return message;
}

bool check_number(const Json& value, NumberRange range, const std::string& place, FaultList& faults) {
  const bool good = value.is_number() && std::isfinite(value.get<double>()) &&
                    value.get<double>() >= range.low && value.get<double>() <= range.high;
  if (good) return true;
  const std::string found = value.is_number() ? json_text(value) : type_in_words(value);
  faults.add(place, "expected a number from " + number_text(range.low) + " to " + number_text(range.high) +
                        ", found " + found);
  return false;
}

bool check_text(const Json& value, std::size_t most, bool may_be_empty, const std::string& place,
                FaultList& faults) {
  if (!value.is_string()) {
    faults.add(place, "expected a text, found " + type_in_words(value));
    return false;
  }
  const std::size_t characters = count_characters(value.get_ref<const std::string&>());
  if (characters <= most && (characters > 0 || may_be_empty)) return true;
  faults.add(place, "expected a text of " + std::string(may_be_empty ? "0" : "1") + " to " +
                        std::to_string(most) + " characters, found " + std::to_string(characters));
  return false;
}

std::string type_in_words(const Json& value) {
  if (value.is_null()) return "null";
  if (value.is_boolean()) return value.get<bool>() ? "true" : "false";
  if (value.is_number()) return "a number";
  if (value.is_string()) return "a text";
  return value.is_array() ? "an array" : "an object";
}

std::string number_text(double value) {
  constexpr double kExactWhole = 1e15;
  if (value == std::trunc(value) && std::abs(value) < kExactWhole)
    return std::to_string(static_cast<std::int64_t>(value));
  return json_text(Json(value));
}

std::size_t count_characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }));
}

}  // namespace halfdrop
