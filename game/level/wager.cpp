#include "game/level/wager.h"

#include <filesystem>

#include <nlohmann/json.hpp>

#include "game/level/fields.h"
#include "physics/random.h"

namespace halfdrop {

namespace {

constexpr std::size_t kLongestFile = 1 << 16, kTitle = 80, kWords = 1000, kName = 80;
constexpr std::size_t kMostRounds = 6, kMostMistakes = 4;

std::vector<std::string> read_mistakes(const Json& round, const std::string& place, FaultList& faults) {
  std::vector<std::string> mistakes;
  Fields fields(round, place, faults);
  const Json* const list = fields.array("mistakes", 0, kMostMistakes);
  for (std::size_t i = 0; list != nullptr && i < list->size(); ++i) {
    const Json& name = (*list)[i];
    if (check_text(name, kName, false, pointer_to(fields.place_of("mistakes"), i), faults))
      mistakes.push_back(name.get<std::string>());
  }
  fields.finish();
  return mistakes;
}

void read_rounds(const Json& object, Wager& wager, FaultList& faults) {
  Fields fields(object, "/wager", faults);
  fields.text("level", wager.level, kName);
  fields.number("within_cm3", wager.within_cm3, {0.02, 1.0}, Need::optional);
  const Json* const rounds = fields.array("rounds", 2, kMostRounds);
  for (std::size_t i = 0; rounds != nullptr && i < rounds->size(); ++i)
    wager.rounds.push_back(read_mistakes((*rounds)[i], pointer_to(fields.place_of("rounds"), i), faults));
  fields.finish();
}

}  // namespace

Result<Wager> read_wager_text(const std::string& json, const std::string& name_for_faults) {
  FaultList faults(name_for_faults);
  Wager wager;
  wager.id = std::filesystem::path(name_for_faults).stem().string();
  const auto parsed = parse_json(json, {}, faults);
  if (!parsed) return tl::unexpected(faults.take());
  Fields fields(*parsed, "", faults);
  fields.text("title", wager.title, kTitle);
  fields.text("story", wager.story, kWords);
  fields.text("why", wager.why, kWords);
  fields.text("closing", wager.closing, kWords);
  if (const Json* const object = fields.object("wager")) read_rounds(*object, wager, faults);
  fields.finish();
  if (!faults.empty()) return tl::unexpected(faults.take());
  return wager;
}

Result<Wager> read_wager(const std::string& path) {
  const auto text = read_file(path, kLongestFile);
  if (!text) return tl::unexpected(std::vector<Fault>{text.error()});
  return read_wager_text(*text, path);
}

bool is_wager(const std::string& path) {
  const auto text = read_file(path, kLongestFile);
  if (!text) return false;
  FaultList faults(path);
  const auto parsed = parse_json(*text, {}, faults);
  return parsed && parsed->is_object() && parsed->contains("wager");
}

std::vector<std::size_t> round_order(const Wager& wager, std::uint64_t seed) {
  Random random = Random::stream(seed, 0, Purpose::wager);
  return shuffled(wager.rounds.size(), random);
}

}  // namespace halfdrop
