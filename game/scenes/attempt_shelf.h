#pragma once
// Attempts of this user as files: where a new one goes, how one is taken up again.

#include <memory>
#include <string>

#include "game/scenes/play_scene.h"

namespace halfdrop {

struct NewAttempt {
  std::string level_path;
  std::uint64_t seed = 0;
  std::string alias;
  std::string folder;  ///< made if missing
  Way way = Way::independent;
};

/// Begins an attempt and its journal.
[[nodiscard]] Result<std::unique_ptr<PlayScene>> begin_attempt(const NewAttempt& wanted,
                                                               const PlaySettings& settings);
/// Takes an unfinished attempt up where it was left; hands that must be held have let go.
[[nodiscard]] Result<std::unique_ptr<PlayScene>> go_on_with_attempt(const std::string& path,
                                                                    const PlaySettings& settings);

/// A path as given, or a level of the data folder by its name ("01-spirit-vinegar").
[[nodiscard]] std::string find_level(const std::string& name);
/// True when a file's first line is that of an attempt.
[[nodiscard]] bool looks_like_attempt(const std::string& path);
/// A seed nobody chose.
[[nodiscard]] std::uint64_t fresh_seed();

}  // namespace halfdrop
