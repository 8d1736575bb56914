#pragma once
// Attempts of this user as files: where a new one goes, how one is taken up again.

#include <memory>
#include <optional>
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

/// Seeds of the attempts of one sitting: the one that was given, if any. What is assessed is not tried twice
/// on the same unknown: after the first such attempt its seed is fresh.
class Seeds {
 public:
  explicit Seeds(std::optional<std::uint64_t> given) : given_(given) {}
  [[nodiscard]] std::uint64_t next(Way way);

 private:
  std::optional<std::uint64_t> given_;
  bool assessed_before_ = false;
};

}  // namespace halfdrop
