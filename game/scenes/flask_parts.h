#pragma once
// What the flask's picture is put together from: its outline, its liquid, its glass.

#include "game/scenes/bench_picture.h"

namespace halfdrop {

inline constexpr float kFlaskWall = 3.0F;   ///< glass, design units (about 1.2 mm)
inline constexpr float kFlaskFloor = 5.0F;  ///< glass of the bottom (about 2 mm)

/// The flask's outline about its axis (x = 0) and foot (y = 0), heights negative upwards.
class FlaskShape {
 public:
  explicit FlaskShape(const FlaskSpec& flask);

  [[nodiscard]] const Points& left() const { return left_; }
  [[nodiscard]] float neck() const { return neck_; }
  [[nodiscard]] float height() const { return height_; }
  /// Half the width at a height (outside of the glass).
  [[nodiscard]] float half_at(float y) const;
  /// How far the foot's front edge comes down at x, seen a little from above.
  [[nodiscard]] float sag(float x) const;
  /// The whole line from rim to rim, moved into the flask.
  [[nodiscard]] Points line(Point foot, float wall, float floor) const;
  [[nodiscard]] Points outline(Point foot) const { return line(foot, 0, 0); }

 private:
  Points left_;
  float neck_ = 0, height_ = 0;
};

/// How far the flask leans, its neck in the hand: radians, the foot led to the right positive.
[[nodiscard]] double flask_lean(const BenchPicture& picture);
/// The liquid, place by place in the colour that it has there, and its surface.
void draw_flask_liquid(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot);
/// Drops that cling to the wall or run down it, and the wet trails that they leave.
void draw_wall_drops(Canvas& canvas, const BenchPicture& picture, const FlaskShape& shape, Point foot);
/// The glass behind the liquid, and the glass before it.
void draw_flask_back(Canvas& canvas, const FlaskShape& shape, Point foot);
void draw_flask_front(Canvas& canvas, const FlaskShape& shape, Point foot);

}  // namespace halfdrop
