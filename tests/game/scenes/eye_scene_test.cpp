#include "game/scenes/eye_scene.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "game/scenes/eye_image.h"
#include "game/scenes/eye_picture.h"
#include "physics/eye/sight_line.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

BenchSpec settled() {
  BenchSpec spec;
  settle(spec);
  return spec;
}

/// A bench whose eye is `above_mm` above a meniscus at a reading; what it reads comes from the physics.
View view_at(const BenchSpec& spec, double reading_cm3, double above_mm) {
  const SightGeometry& sight = sight_geometry(spec);
  View view;
  view.column_empty = false;
  view.meniscus_cm3 = reading_cm3;
  view.hands.eye_mm = above_mm - sight.mm_per_cm3 * reading_cm3;
  view.apparent_cm3 = apparent_reading_cm3(sight, view.hands.eye_mm, reading_cm3);
  view.apparent_edge_cm3 = apparent_edge_cm3(sight, view.hands.eye_mm, reading_cm3);
  return view;
}

}  // namespace

TEST_CASE("the dark curve stands against the marks where the eye reads it") {
  const BenchSpec spec = settled();
  for (const double reading : {-0.85, 0.0, 3.4, 21.63, 49.95, 50.7}) {
    for (const double above : {-150.0, -40.0, -5.0, 0.0, 5.0, 40.0, 150.0, 320.0}) {
      CAPTURE(reading);
      CAPTURE(above);
      const View view = view_at(spec, reading, above);
      const EyeScene scene(view, spec);
      CHECK_NEAR(read_off_cm3(scene, scene.lower_edge_mm(0.0)), view.apparent_cm3, 0.0005);
      CHECK_NEAR(read_off_cm3(scene, scene.upper_edge_mm(0.0)), view.apparent_edge_cm3, 0.0005);
    }
  }
}

TEST_CASE("front and back of a ring coincide at eye level only, and show which way the eye is off") {
  const BenchSpec spec = settled();
  const EyeMark mark{210, EyeMark::Length::longest};
  for (const bool wet : {true, false}) {
    CAPTURE(wet);
    // The eye is so far above the ring; the meniscus stands above it, or below.
    const auto opening = [&](double above) {
      View view = view_at(spec, wet ? 20.0 : 22.0, 0.0);
      view.hands.eye_mm = above - 21.0 * sight_geometry(spec).mm_per_cm3;
      const EyeScene scene(view, spec);
      const double front = scene.mark_ring(mark, -1, 1)[1].y_mm;
      const EyeImage image(scene, {front - 8.0, front + 8.0, 0.2, 0.01});
      const auto back = image.back_of_ring(-231.0, 90, 270);
      REQUIRE(!back.empty());
      const auto& line = back.front();
      return line[line.size() / 2].y_mm - front;
    };
    CHECK_NEAR(opening(0.0), 0.0, 1e-6);
    CHECK(opening(20.0) > 0.4);    // from above the back looks higher
    CHECK(opening(-20.0) < -0.4);  // from below lower
  }
}

TEST_CASE("graduations are longest each cm3, middle each half, and end with the scale") {
  const BenchSpec spec = settled();
  const EyeScene scene(view_at(spec, 0.2, 0.0), spec);
  const auto marks = scene.marks_between(-20.0, 30.0);
  REQUIRE(!marks.empty());
  CHECK(marks.front().tenths == 0);  // nothing above zero
  for (const EyeMark& mark : marks) {
    CHECK((mark.length == EyeMark::Length::longest) == (mark.tenths % 10 == 0));
    CHECK((mark.length == EyeMark::Length::middle) == (mark.tenths % 10 == 5));
  }
  const EyeScene low(view_at(spec, 50.0, 0.0), spec);
  CHECK(low.marks_between(-570.0, -540.0).back().tenths == 500);
}

TEST_CASE("the gaze holds the meniscus in the picture while the eye is near, and loses it when far") {
  const BenchSpec spec = settled();
  const Rect area{864, 18, 256, 410};
  const double half_mm =
      0.5 * static_cast<double>(EyePicture::frame(area).h - 16) / EyePicture::units_per_mm(area, spec);
  const auto off_middle = [&](double above) {
    const EyeScene scene(view_at(spec, 20.0, above), spec);
    return scene.lower_edge_mm(0.0) - scene.gaze_mm();
  };
  for (const double above : {-140.0, -60.0, 0.0, 60.0, 140.0}) CHECK(std::abs(off_middle(above)) < half_mm);
  CHECK_NEAR(off_middle(0.0), 0.0, 1e-9);
  CHECK(off_middle(30.0) < -1.0);  // moving the eye up is seen: the meniscus sinks in the picture
  CHECK(off_middle(400.0) < -half_mm);
}

TEST_CASE("an empty burette is seen at the eye's own height") {
  const BenchSpec spec = settled();
  View view;
  view.hands.eye_mm = -123.0;
  CHECK_NEAR(EyeScene(view, spec).gaze_mm(), -123.0, 1e-9);
  view.hands.eye_mm = 60.0;  // above the rim: one looks down on it
  const EyeScene above(view, spec);
  CHECK_NEAR(above.gaze_mm(), above.seen(0.0, above.rim_mm(), above.outer_mm()).y_mm, 5.0);
}

TEST_CASE("one division of 0.1 cm3 is at least 2.5 % of the picture's height") {
  const BenchSpec spec = settled();
  for (const Rect area : {Rect{864, 18, 256, 410}, Rect{864, 18, 400, 410}}) {
    const double division = EyePicture::units_per_mm(area, spec) * spec.burette.scale_length_mm / 500.0;
    CHECK(division >= 0.025 * static_cast<double>(EyePicture::frame(area).h));
  }
}

TEST_CASE("the eye's place on the rail and back") {
  const Rect area{864, 18, 256, 410};
  for (const double eye : {-700.0, -275.0, 0.0, 60.0, 300.0})
    CHECK_NEAR(EyePicture::eye_mm_at(area, EyePicture::rail_y(area, eye)), eye, 0.01);
}

TEST_CASE("in an overfilled burette the surface lies flat at the rim, with no wall left to climb") {
  const BenchSpec spec = settled();
  View view = view_at(spec, -spec.burette.above_zero_cm3 - 0.3, 0.0);
  view.hands.eye_mm = sight_geometry(spec).rim_mm;
  const EyeScene scene(view, spec);
  CHECK_NEAR(scene.lower_edge_mm(0.0), scene.rim_mm(), 1e-6);
  CHECK_NEAR(scene.upper_edge_mm(0.0), scene.rim_mm(), 1e-6);
}

TEST_CASE("every row of the picture keeps to its side of the dark curve") {
  const BenchSpec spec = settled();
  for (const double above : {-60.0, 0.0, 60.0}) {
    CAPTURE(above);
    const EyeScene scene(view_at(spec, 20.0, above), spec);
    const double edge = scene.lower_edge_mm(0.0);
    const EyeImage image(scene, {edge - 12.0, edge + 12.0, 0.25, 0.04});
    for (std::size_t column = 0; column < image.columns(); ++column) {
      for (std::size_t row = 0; row < image.rows(); ++row) {
        const EyePoint& point = image.point(row, column);
        const bool in_curve = point.end.meets == SightMeets::surface;
        const bool between = point.at.y_mm > scene.lower_edge_mm(point.at.x_mm) &&
                             point.at.y_mm < scene.upper_edge_mm(point.at.x_mm);
        CHECK(in_curve == between);
        if (row > 0) CHECK(point.at.y_mm >= image.point(row - 1, column).at.y_mm);
      }
    }
  }
}
