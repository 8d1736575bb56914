#include <filesystem>
#include <ostream>

#include "game/demonstrator/demonstrator.h"
#include "game/demonstrator/mistakes.h"
#include "game/desk/commands.h"
#include "game/level/nearest.h"
#include "game/records/attempt_file.h"

namespace halfdrop::desk {

namespace {

std::string unknown_mistake(const std::string& name) {
  std::vector<std::string_view> names;
  for (const Mistake& mistake : mistakes()) names.push_back(mistake.name);
  return "the catalogue has no mistake \"" + name + "\"" + did_you_mean(name, names);
}

/// Why an attempt cannot be written there, found before it is performed.
std::optional<std::string> cannot_write(const std::filesystem::path& out) {
  std::error_code none;
  const std::filesystem::path folder = out.has_parent_path() ? out.parent_path() : ".";
  if (!std::filesystem::is_directory(folder, none))
    return "cannot be made: there is no folder " + folder.string();
  if (std::filesystem::exists(out, none) && !std::filesystem::is_regular_file(out, none))
    return "cannot be written: it is no file";
  return std::nullopt;
}

}  // namespace

int perform_level(const PerformOptions& options, Streams streams) {
  const auto seed = seed_from(options.seed);
  if (!seed) return wrong_argument("--seed", "expected a whole number from 0 to 2^64 - 1", streams);
  for (const std::string& name : options.mistakes) {
    if (!find_mistake(name)) return wrong_argument("--mistake", unknown_mistake(name), streams);
  }
  if (const auto why = check_alias(options.alias)) return wrong_argument("--alias", *why, streams);
  if (const auto why = cannot_write(options.out))
    return report({Fault{FaultKind::cannot_open, options.out, "", *why}}, streams);
  const Result<Level> level = read_level(options.level);
  if (!level) return report(level.error(), streams);
  for (const std::string& name : options.mistakes) {
    if (!has_room_for(*level, name))
      return wrong_argument("--mistake", "\"" + name + "\" has no place in this level", streams);
  }
  const Performance performance = perform(*level, *seed, options.alias, options.mistakes);
  if (const auto written = write_attempt(performance.attempt, options.out); !written) {
    return report({written.error()}, streams);
  }
  if (!performance.gave_up) return kDone;
  streams.err << options.level << ": the demonstrator gave up: " << *performance.gave_up << '\n';
  return kFailed;
}

}  // namespace halfdrop::desk
