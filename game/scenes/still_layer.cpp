#include "game/scenes/still_layer.h"

#include "game/scenes/palette.h"

namespace halfdrop {

void StillLayer::draw(Canvas& canvas, const std::vector<int>& key,
                      const std::function<void(Canvas&)>& paint) {
  const sf::Vector2u size = canvas.target_size();
  if (!no_texture_ && texture_.getSize() != size) {
    key_.reset();
    no_texture_ = !texture_.create(size.x, size.y);
  }
  if (no_texture_) return paint(canvas);
  if (key_ != key) {
    texture_.clear(palette::wall);
    Canvas layer(texture_, canvas.fonts());
    paint(layer);
    layer.flush();
    texture_.display();
    key_ = key;
  }
  canvas.cover(texture_.getTexture());
}

}  // namespace halfdrop
