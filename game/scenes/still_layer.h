#pragma once
// What stands still for many frames, painted once and then laid under everything else. Without a graphics
// processor, painting the room takes longer than all that moves in it.

#include <SFML/Graphics/RenderTexture.hpp>
#include <functional>
#include <optional>
#include <vector>

#include "game/scenes/canvas.h"

namespace halfdrop {

class StillLayer {
 public:
  /// Covers the canvas with what `paint` paints. It is painted anew when `key` or the window's size is
  /// another than last time, and each time where no texture can be had.
  void draw(Canvas& canvas, const std::vector<int>& key, const std::function<void(Canvas&)>& paint);

 private:
  sf::RenderTexture texture_;
  std::optional<std::vector<int>> key_;
  bool no_texture_ = false;
};

}  // namespace halfdrop
