#include "game/records/change_reader.h"

#include <algorithm>
#include <array>

#include <nlohmann/json.hpp>

#include "game/level/nearest.h"

namespace halfdrop {
namespace {

constexpr std::size_t kLongestText = 1000;

constexpr std::array<std::string_view, 4> kKinds = {"hands", "do", "write", "end"};

bool is_hash(const std::string& text) {
  constexpr std::size_t kDigits = 16;
  return text.size() == kDigits && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

}  // namespace

void ChangeReader::read(const Json& json, const std::string& place) {
  const std::size_t faults_before = faults_.size();
  if (ended_) faults_.add(place, "stands after the end of the attempt");
  Fields fields(json, place, faults_);
  Change change;
  read_tick(fields, change.tick);
  const auto kinds = std::count_if(kKinds.begin(), kKinds.end(), [&](auto kind) { return fields.has(kind); });
  if (json.is_object() && kinds != 1)
    faults_.add(place,
                "expected one of \"hands\", \"do\", \"write\" and \"end\", found " + std::to_string(kinds));
  if (const Json* const hands = fields.object("hands", Need::optional))
    change.what = read_hands(*hands, fields.place_of("hands"));
  if (fields.has("do")) read_deed(fields, change);
  if (const Json* const writing = fields.object("write", Need::optional))
    read_writing(*writing, fields.place_of("write"), change);
  if (fields.has("end")) read_ending(fields, change);
  for (const std::string_view key : {"do", "end"}) static_cast<void>(fields.any(key));
  fields.finish();
  if (faults_.size() == faults_before) attempt_.changes.push_back(std::move(change));
}

void ChangeReader::read_tick(Fields& fields, Tick& tick) {
  tick = last_tick_;
  fields.whole("tick", tick, 0, kLongestAttempt);
  if (tick < last_tick_)
    fields.fault("tick", "expected a tick not before the line above's, " + std::to_string(last_tick_) +
                             ", found " + std::to_string(tick));
  last_tick_ = std::max(last_tick_, tick);
}

HandsChange ChangeReader::read_hands(const Json& json, const std::string& place) {
  HandsChange change;
  Fields fields(json, place, faults_);
  read_hand(fields, "tap", &HandsChange::tap, change);
  read_hand(fields, "eye", &HandsChange::eye_mm, change);
  read_flask(fields, change);
  read_hand(fields, "swirl", &HandsChange::swirl, change);
  read_hand(fields, "wash", &HandsChange::wash, change);
  read_hand(fields, "pour", &HandsChange::pour, change);
  read_hand(fields, "tilt", &HandsChange::tilt_degrees, change);
  read_hand(fields, "card", &HandsChange::card_mm, change);
  read_hand(fields, "clamp", &HandsChange::clamp_mm, change);
  read_hand(fields, "valve", &HandsChange::valve, change);
  read_hand(fields, "tip", &HandsChange::tip, change);
  read_hand(fields, "fill", &HandsChange::fill, change);
  fields.finish();
  if (json.empty()) faults_.add(place, "expected what changed, found nothing");
  return change;
}

void ChangeReader::read_hand(Fields& fields, std::string_view name,
                             std::optional<double> HandsChange::*member, HandsChange& change) {
  const Json* const value = fields.any(name);
  if (value == nullptr) return;
  if (!value->is_number()) {
    fields.fault(name, "expected a number, found " + type_in_words(*value));
    return;
  }
  change.*member = value->get<double>();
  HandsChange one;
  one.*member = change.*member;
  check_hand(one, fields.place_of(name), *value);
}

void ChangeReader::read_flask(Fields& fields, HandsChange& change) {
  const Json* const pair = fields.array("flask", 2, 2, Need::optional);
  if (pair == nullptr) return;
  const std::string place = fields.place_of("flask");
  std::size_t kept = 0;
  for (std::size_t i = 0; i < 2; ++i) {
    const Json& value = (*pair)[i];
    const auto member = i == 0 ? &HandsChange::flask_x_cm : &HandsChange::flask_y_cm;
    if (value.is_number()) {
      change.*member = value.get<double>();
      HandsChange one;
      one.*member = change.*member;
      check_hand(one, pointer_to(place, i), value);
    } else if (value.is_null()) {
      ++kept;  // that one did not change
    } else {
      faults_.add(pointer_to(place, i),
                  "expected a number, or null for what did not change, found " + type_in_words(value));
    }
  }
  if (kept == 2) faults_.add(place, "expected at least one number, found none");
}

void ChangeReader::check_hand(const HandsChange& one, const std::string& place, const Json& value) {
  if (const std::optional<std::string> why = check_hands(one))
    faults_.add(place, *why + ", found " + json_text(value));
}

void ChangeReader::read_deed(Fields& fields, Change& change) {
  std::string name;
  fields.text("do", name, kLongestText);
  if (name.empty()) return;
  if (const std::optional<Deed> deed = deed_from_name(name)) {
    change.what = *deed;
    return;
  }
  std::vector<std::string_view> known;
  for (int i = 0; i < kDeeds; ++i) known.push_back(deed_name(static_cast<Deed>(i)));
  std::string message = "unknown deed " + in_quotes(name);
  message += did_you_mean(name, known);
  fields.fault("do", message);
}

void ChangeReader::read_writing(const Json& json, const std::string& place, Change& change) {
  const std::size_t faults_before = faults_.size();
  Writing writing;
  Fields fields(json, place, faults_);
  fields.text("cell", writing.cell, kLongestText);
  fields.text("text", writing.text, kLongestText, Need::required, true);
  fields.finish();
  if (faults_.size() > faults_before) return;
  if (check_cells_) {
    if (const std::optional<std::string> why = check_writing(attempt_.level, writing))
      faults_.add(place, *why);
  }
  change.what = std::move(writing);
}

void ChangeReader::read_ending(Fields& fields, Change& change) {
  ended_ = true;
  Ending ending;
  fields.text("end", ending.how, kLongestText);
  if (!ending.how.empty() && ending.how != "handed in" && ending.how != "left")
    fields.fault("end", "expected \"handed in\" or \"left\", found " + in_quotes(ending.how));
  fields.text("state", ending.state_hash, kLongestText);
  if (!ending.state_hash.empty() && !is_hash(ending.state_hash))
    fields.fault("state", "expected 16 hexadecimal digits, found " + in_quotes(ending.state_hash));
  change.what = std::move(ending);
}

}  // namespace halfdrop
