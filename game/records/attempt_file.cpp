#include "game/records/attempt_file.h"

#include <cassert>
#include <cmath>

#include <nlohmann/json.hpp>

#include "game/level/strict_json.h"
#include "game/records/change_reader.h"

namespace halfdrop {
namespace {

constexpr std::size_t kLongestAlias = 100;

/// Whole numbers without ".0", as a person writes them.
Json number(double value) {
  constexpr double kExactWhole = 1e15;
  if (value == std::trunc(value) && std::abs(value) < kExactWhole) return static_cast<std::int64_t>(value);
  return value;
}

Json number_or_null(const std::optional<double>& value) { return value ? number(*value) : Json(); }

Json hands_json(const HandsChange& change) {
  Json hands = Json::object();
  const auto put = [&](const char* name, const std::optional<double>& value) {
    if (value) hands[name] = number(*value);
  };
  put("tap", change.tap);
  put("eye", change.eye_mm);
  if (change.flask_x_cm || change.flask_y_cm)
    hands["flask"] = Json::array({number_or_null(change.flask_x_cm), number_or_null(change.flask_y_cm)});
  put("swirl", change.swirl);
  put("wash", change.wash);
  put("pour", change.pour);
  put("tilt", change.tilt_degrees);
  put("card", change.card_mm);
  put("clamp", change.clamp_mm);
  put("valve", change.valve);
  put("tip", change.tip);
  put("fill", change.fill);
  return hands;
}

void put_what(Json& line, const HandsChange& hands) { line["hands"] = hands_json(hands); }
void put_what(Json& line, Deed deed) { line["do"] = std::string(deed_name(deed)); }
void put_what(Json& line, const Writing& writing) {
  line["write"] = Json{{"cell", writing.cell}, {"text", writing.text}};
}
void put_what(Json& line, const Ending& ending) {
  line["end"] = ending.how;
  line["state"] = ending.state_hash;
}

struct Line {
  std::string_view text;
  int number = 0;
};

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    lines.push_back({text.substr(0, end), static_cast<int>(lines.size()) + 1});
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  }
  return lines;
}

std::string line_place(const Line& line) { return "line " + std::to_string(line.number); }

void read_version(Fields& fields, std::string_view key, int ours, const std::string& what) {
  std::int64_t version = ours;
  fields.whole(key, version, 0, 1'000'000);
  if (version != ours)
    fields.fault(key, "expected " + what + " " + std::to_string(ours) + ", found " + std::to_string(version));
}

/// Older attempts do not say it.
void read_way(Fields& fields, Way& way) {
  constexpr std::size_t kLongestWay = 40;
  std::string name(way_name(way));
  fields.text("way", name, kLongestWay, Need::optional);
  if (const auto known = way_from_name(name))
    way = *known;
  else
    fields.fault("way", "expected \"guided\", \"independent\" or \"assessed\", found " + in_quotes(name));
}

/// Returns whether the level is sound, so that cells can be checked.
bool read_first(const Json& json, const std::string& place, Attempt& attempt, FaultList& faults) {
  Fields fields(json, place, faults);
  read_version(fields, "attempt", 1, "attempt format");
  read_version(fields, "model", kModelVersion, "an attempt of model");
  fields.whole("seed", attempt.seed);
  fields.text("alias", attempt.alias, kLongestAlias, Need::required, true);
  read_way(fields, attempt.way);
  const Json* const level = fields.object("level");
  const Json* const substances = fields.object("substances");
  fields.finish();
  if (level == nullptr || substances == nullptr) return false;
  Result<Level> read = read_level_text(json_text(*level), json_text(*substances), faults.file());
  if (read)
    attempt.level = std::move(*read);
  else
    faults.add_all(read.error(), place);
  return read.has_value();
}

/// Whether a last line that does not parse was cut off while it was written.
bool torn(const Line& line) { return line.number > 1 && (line.text.empty() || line.text.starts_with('{')); }

/// Parses a line. Only the last one can be torn.
std::optional<Json> parse_line(const Line& line, bool last, AttemptFile& file, FaultList& faults) {
  const std::string place = line_place(line);
  FaultList of_line(faults.file());
  std::optional<Json> json = parse_json(line.text, {place, place + " "}, of_line);
  if (!json && last && torn(line)) {
    file.warnings.push_back(faults.file() + ": " + place + ": torn last line dropped");
    return std::nullopt;
  }
  faults.add_all(of_line.take());
  return json;
}

}  // namespace

std::optional<std::string> check_alias(const std::string& alias) {
  if (count_characters(alias) <= kLongestAlias) return std::nullopt;
  return "the alias is longer than " + std::to_string(kLongestAlias) + " characters";
}

Result<AttemptFile> read_attempt(const std::string& path) {
  const tl::expected<std::string, Fault> text = read_file(path, kMostAttemptBytes);
  if (!text) return tl::unexpected(std::vector<Fault>{text.error()});
  return read_attempt_text(*text, path);
}

Result<AttemptFile> read_attempt_text(const std::string& text, const std::string& name_for_faults) {
  AttemptFile file;
  FaultList faults(name_for_faults);
  const std::vector<Line> lines = lines_of(text);
  if (lines.empty()) faults.add(FaultKind::cannot_parse, "", "empty: expected an attempt's first line");
  ChangeReader changes(file.attempt, faults);
  for (const Line& line : lines) {
    const std::optional<Json> json = parse_line(line, &line == &lines.back(), file, faults);
    if (!json) continue;
    const std::string place = line_place(line) + " ";
    if (line.number == 1)
      changes.check_cells(read_first(*json, place, file.attempt, faults));
    else
      changes.read(*json, place);
  }
  if (!faults.empty()) return tl::unexpected(faults.take());
  return file;
}

std::string first_line(const Attempt& attempt) {
  assert(!attempt.level.source_json.empty() && !attempt.level.substances_json.empty());
  Json start = {{"attempt", 1}, {"model", kModelVersion}};
  Json end = {{"seed", attempt.seed}, {"alias", attempt.alias}, {"way", std::string(way_name(attempt.way))}};
  // The level and its substances go in as the text they are.
  std::string line = json_text(start);
  line.pop_back();
  line +=
      ",\"level\":" + attempt.level.source_json + ",\"substances\":" + attempt.level.substances_json + ",";
  line += json_text(end).substr(1);
  return line;
}

std::string change_line(const Change& change) {
  Json line = {{"tick", change.tick}};
  std::visit([&](const auto& what) { put_what(line, what); }, change.what);
  return json_text(line);
}

std::string attempt_text(const Attempt& attempt) {
  std::string text = first_line(attempt) + "\n";
  for (const Change& change : attempt.changes) text += change_line(change) + "\n";
  return text;
}

}  // namespace halfdrop
