#include <filesystem>
#include <ostream>

#include "game/demonstrator/wager_rounds.h"
#include "game/desk/commands.h"
#include "game/level/endpoint_checks.h"
#include "game/level/text_catalogue.h"

namespace halfdrop::desk {

namespace {

int check_endpoint_of(const Level& level, const std::string& path, Streams streams) {
  if (level.drill) {  // nothing is titrated
    streams.out << path << ": sound\n";
    return kDone;
  }
  const EndpointChecks checks = check_endpoint(level, path);
  for (const Fault& warning : checks.warnings) streams.err << "warning: " << to_string(warning) << '\n';
  if (!checks.faults.empty()) return report(checks.faults, streams);
  streams.out << path << (checks.warnings.empty() ? ": sound\n" : ": sound, with a warning\n");
  return kDone;
}

/// The words of a language, against the English that this program speaks.
int check_words(const std::string& path, Streams streams) {
  const bool is_english = std::filesystem::path(path).stem() == kFirstLanguage;
  const Result<TextCatalogue> english = read_language(data_folder(), std::string(kFirstLanguage));
  if (!is_english && !english) return report(english.error(), streams);
  const Result<TextCatalogue> words = read_catalogue(path, is_english ? nullptr : &*english);
  if (!words) return report(words.error(), streams);
  streams.out << path << ": sound\n";
  return kDone;
}

int check_wager(const std::string& path, Streams streams) {
  const Result<PlayableWager> playable = read_playable_wager(path);
  if (!playable) return report(playable.error(), streams);
  streams.out << path << ": sound\n";
  return kDone;
}

}  // namespace

int check_levels(const std::vector<std::string>& levels, Streams streams) {
  std::vector<int> statuses;
  for (const std::string& path : levels) {
    if (is_catalogue(path)) {
      statuses.push_back(check_words(path, streams));
      continue;
    }
    if (is_wager(path)) {
      statuses.push_back(check_wager(path, streams));
      continue;
    }
    const Result<Level> level = read_level(path);
    statuses.push_back(level ? check_endpoint_of(*level, path, streams) : report(level.error(), streams));
  }
  return batch_status(statuses);
}

}  // namespace halfdrop::desk
