#pragma once
// Where things are on the screen: three scales of one bench (far, near, eye), in design units.

#include "game/scenes/paint.h"
#include "game/session/view.h"

namespace halfdrop::layout {

inline constexpr float kHorizon = 532.0F;      ///< back edge of the bench
inline constexpr float kNearUnits_cm = 26.5F;  ///< design units a cm in the near picture
inline constexpr float kJetX = 432.0F;
inline constexpr float kFootY = 634.0F;  ///< where the flask stands
inline constexpr float kShelfY = 250.0F;

inline constexpr Rect kFar{0, 0, 190, 640};
inline constexpr Rect kNear{190, 0, 660, 680};
inline constexpr Rect kEye{864, 18, 316, 410};
inline constexpr Rect kEyeLarge{190, 16, 594, 644};  ///< where reading is all there is

/// Near picture: cm to the right of the jet, cm above the foot of the flask.
[[nodiscard]] Point near_point(double x_cm, double height_cm);
/// `clamp_mm` as Hands::clamp_mm.
[[nodiscard]] float tip_y(const BenchSpec& spec, double clamp_mm);
[[nodiscard]] float tap_y(const BenchSpec& spec, double clamp_mm);

/// The flask's axis for a hand's flask position, and back. True to scale near the jet, drawn together beyond.
[[nodiscard]] float flask_x(double flask_x_cm);
[[nodiscard]] double flask_x_cm_at(float x);
inline constexpr double kParked_cm = 26.0;

/// Far picture: true proportions of the whole burette on its stand.
struct FarScale {
  float units_mm = 0.6F;
  float zero_y = 90.0F;   ///< the zero mark
  float tube_x = 104.0F;  ///< axis
  float foot_y = 604.0F;  ///< bench under the stand
  float rim_y = 60.0F, tap_y = 470.0F, tip_y = 530.0F, last_y = 430.0F;
  float half_width = 4.0F;

  /// Lengths on the tube are where the clamps hold it.
  explicit FarScale(const BenchSpec& spec, double clamp_mm = 0.0);
  [[nodiscard]] float y_of_mm(double above_zero_mm) const {
    return zero_y - static_cast<float>(above_zero_mm) * units_mm;
  }
  [[nodiscard]] double mm_at(float y) const { return static_cast<double>((zero_y - y) / units_mm); }
  /// The meniscus for a reading; the scale goes on above zero, the taper below the last mark has its own
  /// pitch.
  [[nodiscard]] float y_of_reading(const BenchSpec& spec, double reading_cm3) const;
};

/// Cards of drills: beside the bench, and beside the large eye.
inline constexpr Rect kDrillCard{850, 436, 418, 272};
inline constexpr Rect kReadingCard{808, 16, 458, 688};

/// Places of things not in use.
inline constexpr Rect kTitrantBottle{536, 54, 104, 196};
inline constexpr Rect kSampleBottle{652, 54, 104, 196};
inline constexpr Rect kIndicator{768, 124, 64, 126};
inline constexpr Rect kSecondIndicator{768, 4, 64, 116};  ///< on the shelf's edge above the other
inline constexpr Rect kPipette{534, 265, 312, 24};
inline constexpr Rect kPipetteDipped{535, 300, 24, 312};  ///< worked by hand: in the sample's beaker
inline constexpr Rect kPipetteLifted{535, 246, 24, 312};  ///< ... above the waste
inline constexpr Rect kPipetteBeaker{503, 562, 88, 74};
inline constexpr Rect kWashBottle{204, 82, 76, 168};
inline constexpr Rect kFunnelAside{296, 184, 66, 66};
inline constexpr Rect kCloth{212, 268, 62, 82};
inline constexpr Rect kBeakerAside{204, 486, 116, 146};
inline constexpr Rect kBeakerUnder{374, 488, 116, 146};
inline constexpr Rect kTileAside{536, 436, 84, 96};
inline constexpr Rect kTileLaid{292, 614, 284, 40};
inline constexpr Rect kSink{766, 402, 80, 150};
inline constexpr Rect kCoat{1194, 96, 78, 320};
inline constexpr Rect kGoggles{1190, 30, 84, 44};

}  // namespace halfdrop::layout
