#include "game/scenes/attempt_shelf.h"

#include <chrono>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <random>

#include "game/scenes/worked_slip.h"
#include "game/session/replay.h"

namespace halfdrop {

namespace {

namespace fs = std::filesystem;

std::string time_stamp() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm parts{};
  localtime_r(&now, &parts);
  char text[32];
  std::strftime(text, sizeof text, "%Y%m%d-%H%M%S", &parts);
  return text;
}

std::string free_path(const std::string& folder, const std::string& level_id) {
  const std::string stem = folder + "/" + level_id + "-" + time_stamp();
  std::string path = stem + ".jsonl";
  std::error_code none;
  for (int i = 2; fs::exists(path, none); ++i) path = stem + "-" + std::to_string(i) + ".jsonl";
  return path;
}

/// With what of the worked example these attempts in a folder have withdrawn; who gets none needs none of it.
PlaySettings with_withdrawn(PlaySettings settings, const Session& session, const std::string& folder) {
  if (!session.level().calculation.empty() && no_help_words(session.way()).empty())
    settings.withdrawn = withdrawn_lines(folder, session.level(), session.attempt().alias);
  return settings;
}

}  // namespace

Result<std::unique_ptr<PlayScene>> begin_attempt(const NewAttempt& wanted, const PlaySettings& settings) {
  auto level = read_level(wanted.level_path);
  if (!level) return tl::unexpected(level.error());
  std::error_code failed;
  fs::create_directories(wanted.folder, failed);
  if (failed) {
    return tl::unexpected(std::vector{
        Fault{FaultKind::cannot_open, wanted.folder, "", "cannot make this folder: " + failed.message()}});
  }
  const std::string path = free_path(wanted.folder, level->id);
  Session session(std::move(*level), wanted.seed, wanted.alias, wanted.way);
  const PlaySettings with = with_withdrawn(settings, session, wanted.folder);
  auto journal = Journal::begin(path, session.attempt());
  if (!journal) return tl::unexpected(std::vector{journal.error()});
  return std::make_unique<PlayScene>(std::move(session), std::move(*journal), with);
}

Result<std::unique_ptr<PlayScene>> go_on_with_attempt(const std::string& path, const PlaySettings& settings) {
  auto file = read_attempt(path);
  if (!file) return tl::unexpected(file.error());
  Replay played = replay(file->attempt);
  if (!played.outcome.reproduced) {
    return tl::unexpected(std::vector{Fault{FaultKind::not_reproduced, path, "", played.outcome.message}});
  }
  if (played.session.ended()) {
    return tl::unexpected(std::vector{Fault{FaultKind::invalid, path, "", "this attempt has ended"}});
  }
  auto journal = Journal::go_on(path, file->attempt);
  if (!journal) return tl::unexpected(std::vector{journal.error()});
  const PlaySettings with = with_withdrawn(settings, played.session, fs::path(path).parent_path().string());
  auto scene = std::make_unique<PlayScene>(std::move(played.session), std::move(*journal), with);
  scene->let_go();
  return scene;
}

std::string find_level(const std::string& name) {
  std::error_code none;  // a name too long for a file is no file
  if (fs::exists(name, none)) return name;
  for (const char* folder : {"/levels/", "/levels/drills/", "/levels/demonstrations/"}) {
    const std::string path = data_folder() + folder + name;
    for (const std::string& candidate : {path, path + ".json"}) {
      if (fs::is_regular_file(candidate, none)) return candidate;
    }
  }
  return name;
}

bool looks_like_attempt(const std::string& path) {
  std::ifstream file(path);
  std::string start(64, '\0');
  file.read(start.data(), static_cast<std::streamsize>(start.size()));
  return start.find("\"attempt\"") != std::string::npos;
}

std::uint64_t Seeds::next(Way way) {
  const bool again = way == Way::assessed && assessed_before_;
  assessed_before_ = assessed_before_ || way == Way::assessed;
  return given_ && !again ? *given_ : fresh_seed();
}

std::uint64_t fresh_seed() {
  std::random_device source;
  return (static_cast<std::uint64_t>(source()) << 32U | source()) % 1'000'000'000U;
}

}  // namespace halfdrop
