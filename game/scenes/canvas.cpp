#include "game/scenes/canvas.h"

#include <SFML/Graphics/Sprite.hpp>
#include <SFML/Graphics/Texture.hpp>
#include <algorithm>
#include <cmath>

namespace halfdrop {

Canvas::Canvas(sf::RenderTarget& target, const Fonts& fonts) : target_(target), fonts_(fonts) { begin(); }

void Canvas::begin() {
  const auto width = static_cast<float>(target_.getSize().x),
             height = static_cast<float>(target_.getSize().y);
  scale_ = std::max(0.05F, std::min(width / kDesignWidth, height / kDesignHeight));
  origin_ = {std::floor((width - kDesignWidth * scale_) / 2),
             std::floor((height - kDesignHeight * scale_) / 2)};
  shapes_.clear();
  for (auto& [key, batch] : texts_) batch.corners.clear();
  use_view({0, 0, width, height});
}

void Canvas::lean(Point about, double radians) {
  pivot_ = about;
  lean_ = {static_cast<float>(std::cos(radians)), static_cast<float>(std::sin(radians))};
}

void Canvas::use_view(const Rect& pixels) {
  const auto width = static_cast<float>(target_.getSize().x),
             height = static_cast<float>(target_.getSize().y);
  sf::View view(sf::FloatRect(pixels.x, pixels.y, pixels.w, pixels.h));
  view.setViewport({pixels.x / width, pixels.y / height, pixels.w / width, pixels.h / height});
  target_.setView(view);
}

void Canvas::flush() {
  if (!shapes_.empty()) target_.draw(shapes_.data(), shapes_.size(), sf::Triangles);
  shapes_.clear();
  for (auto& [key, batch] : texts_) {
    if (batch.corners.empty()) continue;
    // Asked for now: the page's texture may have grown since the glyphs were laid.
    const sf::Texture& texture = key.first->getTexture(key.second);
    target_.draw(batch.corners.data(), batch.corners.size(), sf::Triangles, sf::RenderStates(&texture));
    batch.corners.clear();
  }
}

void Canvas::cover(const sf::Texture& picture) {
  flush();
  target_.draw(sf::Sprite(picture), sf::BlendNone);
}

Rect Canvas::window() const {
  const Point top_left = to_design(0, 0);
  return {top_left.x, top_left.y, static_cast<float>(target_.getSize().x) / scale_,
          static_cast<float>(target_.getSize().y) / scale_};
}

Point Canvas::to_design(int x, int y) const {
  return {(static_cast<float>(x) - origin_.x) / scale_, (static_cast<float>(y) - origin_.y) / scale_};
}

void Canvas::clip(const Rect& rect) {
  flush();
  const auto width = static_cast<float>(target_.getSize().x),
             height = static_cast<float>(target_.getSize().y);
  const Point a = to_pixels({rect.x, rect.y}), b = to_pixels({rect.right(), rect.bottom()});
  const float left = std::clamp(std::round(a.x), 0.0F, width - 1),
              top = std::clamp(std::round(a.y), 0.0F, height - 1);
  const float right = std::clamp(std::round(b.x), left + 1, width);
  const float bottom = std::clamp(std::round(b.y), top + 1, height);
  use_view({left, top, right - left, bottom - top});
}

void Canvas::unclip() {
  flush();
  use_view({0, 0, static_cast<float>(target_.getSize().x), static_cast<float>(target_.getSize().y)});
}

}  // namespace halfdrop
