#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

#include "game/scenes/play_scene.h"

namespace halfdrop {

struct Options {
  std::string level;  ///< path or name of a level, or of an attempt with picture; empty: the list
  std::string alias;
  std::string language = "en";  ///< of assets/text
  std::string folder;           ///< of attempts
  std::string picture;          ///< file to draw one frame into
  std::string page;             ///< what the picture is of, where it is not the bench (page_picture.h)
  std::string strip;            ///< file to draw one drop's pictures into
  std::optional<double> at_s;   ///< moment of the picture
  std::optional<std::uint64_t> seed;
  std::optional<Way> way;  ///< proposed on the page before a level
  unsigned width = 1280, height = 720;
  bool fullscreen = false, places = false;
  PlaySettings play;
};

/// The options, or the status to end with (help was printed, or arguments were wrong and that was said).
[[nodiscard]] std::variant<Options, int> read_options(int count, const char* const* arguments);

}  // namespace halfdrop
