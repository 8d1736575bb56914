#include "game/scenes/bench_picture.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/drop_picture.h"
#include "game/scenes/glassware.h"
#include "game/scenes/making_up_panel.h"
#include "game/scenes/palette.h"
#include "game/scenes/room_picture.h"

namespace halfdrop {

namespace {

constexpr double kBeakerHolds_cm3 = 150.0;

float beaker_fill(const View& view) {
  return static_cast<float>(std::min(1.0, view.beaker_cm3 / kBeakerHolds_cm3));
}

/// What is asked for is let into the drill's beaker.
Phrase beaker_word(const BenchPicture& picture) {
  return picture.outfit.beaker_takes_it ? Phrase() : Phrase("bench.waste");
}

float bottle_level(const BenchPicture& picture) {
  const double full = picture.spec.titrant.volume_cm3;
  return static_cast<float>(full > 0 ? std::clamp(picture.view.bottle_cm3 / full, 0.0, 1.0) : 0.0);
}

/// Where it stands under the jet, or is held to the tip to take a drop off.
Rect beaker_under(const BenchPicture& picture) {
  Rect beaker = layout::kBeakerUnder;
  const float held = touching(picture.view);
  beaker.x -= held * (beaker.w / 2 - 7);
  beaker.y -= held * (beaker.y + 16 - layout::tip_y(picture.spec, picture.view.hands.clamp_mm));
  return beaker;
}

}  // namespace

std::string short_indicator_name(const std::string& name) {
  // Two letters fit the dropper's paper: the first of each half of a long name.
  if (name.size() < 10) return name;
  if (name == "phenolphthalein") return "phenol-\nphthalein";
  const std::size_t gap = name.find(' ');
  return gap == std::string::npos ? name : name.substr(0, gap) + "\n" + name.substr(gap + 1);
}

TintTable tints_of(const BenchSpec& spec, Backdrop backdrop) {
  constexpr double kStrongest = 0.05, kLongest_cm = 10.0;
  return {spec.indicator, kStrongest * spec.indicator.stock_mol_dm3 * kLongest_cm, backdrop};
}

void draw_things_behind(Canvas& canvas, const BenchPicture& picture) {
  const View& view = picture.view;
  const Outfit& outfit = picture.outfit;
  if (!outfit.liquid) return;
  draw_cloth(canvas, layout::kCloth);
  if (outfit.titration) draw_sink(canvas, layout::kSink);
  if (outfit.glass()) {
    if (!pipette_in_hand(picture)) draw_pipette_rack(canvas, layout::kPipette);
    const bool pours_water = view.hands.pour > 0 && view.in_hand == Bottle::water;
    if (view.hands.wash <= 0 && !pours_water) draw_wash_bottle(canvas, layout::kWashBottle);
    if (!view.tile_laid) draw_leaning_tile(canvas, layout::kTileAside);
  }
  if (outfit.funnel() && !view.funnel_in)
    draw_funnel(canvas, {layout::kFunnelAside.x + 33, layout::kFunnelAside.bottom() - 3}, 31, 30, 28, true);
  draw_goggles_hook(canvas, layout::kGoggles, !view.goggles_on);
  draw_coat_peg(canvas, layout::kCoat, !view.coat_on);
}

void draw_washing(Canvas& canvas, const BenchPicture& picture) {
  const double wash = picture.view.hands.wash;
  if (wash <= 0) return;
  const Point foot = flask_foot(picture);
  const float rim = foot.y - static_cast<float>(picture.spec.flask.height_cm) * layout::kNearUnits_cm;
  const Rect upright{0, 0, layout::kWashBottle.w, layout::kWashBottle.h};
  const Point spout = wash_spout(upright);
  const Point want{foot.x - 26, rim - 12};
  const Rect held{want.x - spout.x, want.y - spout.y, upright.w, upright.h};
  const Points water = Path(want).quad({want.x + 16, want.y + 2}, {foot.x + 30, rim + 44}).points();
  canvas.stroke(water, {1.6F + 1.4F * static_cast<float>(wash)}, faded(palette::water_edge, 0.9));
  canvas.stroke(water, {0.9F}, faded(sf::Color::White, 0.9));
  draw_wash_bottle(canvas, held);
}

namespace {

/// The sample's beaker that it is dipped into, or the waste's that it is let down over.
void draw_pipette_beaker(Canvas& canvas, const BenchPicture& picture) {
  const bool dipped = picture.view.pipette.place == PipettePlace::dipped;
  const Rect& beaker = layout::kPipetteBeaker;
  draw_beaker(canvas, beaker, dipped ? 0.6F : 0.12F, "");
  const Rect label{beaker.centre().x - 30, beaker.bottom() - 23, 60, 18};
  canvas.rounded_rect(label, 3, palette::paper);
  canvas.text_middle(dipped ? say("bench.sample") : say("bench.waste"), label.centre(),
                     {14, palette::print, Face::semibold, Align::centre});
}

/// So that the bottle behind it does not show through its liquid.
void draw_light_behind(Canvas& canvas, const Rect& pipette) {
  canvas.soft_rect({pipette.centre().x - 14, pipette.y + 60, 28, pipette.h - 150}, 14, 8,
                   faded(palette::wall_light, 0.8));
}

void draw_pipette_in_hand(Canvas& canvas, const BenchPicture& picture) {
  const PipetteView& by_hand = picture.view.pipette;
  const Rect held = held_pipette(picture);
  if (!by_hand.by_hand) {
    const double left =
        picture.view.pipette_cm3 > 0.5 ? 1.0 : 1.0 - picture.pipette_let_run_s / kPipetteRuns_s;
    draw_held_pipette(canvas, held, static_cast<float>(left));
    canvas.flush();
    return;
  }
  const bool over_beaker = by_hand.place == PipettePlace::aside || by_hand.place == PipettePlace::dipped;
  const float left =
      pipette_filled(by_hand.level_mm, picture.view.pipette_cm3 / picture.spec.pipette.true_cm3);
  if (!over_beaker) draw_light_behind(canvas, held);
  draw_held_pipette(canvas, held, left);
  draw_pipette_tip(canvas, {held.centre().x, held.bottom()},
                   {by_hand.outside_wet, by_hand.flow_cm3_s > 0.0 || by_hand.drains, by_hand.froths});
  if (over_beaker) draw_pipette_beaker(canvas, picture);
  canvas.flush();
}

}  // namespace

bool pipette_in_hand(const BenchPicture& picture) {
  const PipetteView& by_hand = picture.view.pipette;
  if (by_hand.by_hand) return by_hand.place != PipettePlace::aside || by_hand.holds;
  return picture.view.pipette_cm3 > 0.5 || picture.pipette_let_run_s < kPipetteRuns_s;
}

Rect held_pipette(const BenchPicture& picture) {
  const PipetteView& by_hand = picture.view.pipette;
  if (by_hand.by_hand && by_hand.place == PipettePlace::dipped) return layout::kPipetteDipped;
  if (by_hand.by_hand && by_hand.place == PipettePlace::aside) return layout::kPipetteLifted;
  const Point foot = flask_foot(picture);
  const float neck = foot.y - static_cast<float>(picture.spec.flask.height_cm) * layout::kNearUnits_cm;
  const float wall = static_cast<float>(picture.spec.flask.neck_radius_cm) * layout::kNearUnits_cm - 4;
  const float tip = neck + 34, x = foot.x + (by_hand.place == PipettePlace::over_flask ? 0 : wall);
  return {x - 12, tip - layout::kPipette.w, 24, layout::kPipette.w};
}

void draw_still_bench(Canvas& canvas, const BenchPicture& picture) {
  const View& view = picture.view;
  draw_room(canvas);
  draw_far_stand(canvas, picture);
  draw_things_behind(canvas, picture);
  canvas.flush();
  if (!picture.outfit.liquid) return;
  const auto stands = [&](Bottle bottle) { return view.hands.pour <= 0 || view.in_hand != bottle; };
  const bool made = view.preparation.asked, titrant_made = made && picture.spec.unknown_in_flask;
  const auto made_up = [&](const Rect& place, const std::string& label) {
    draw_volumetric(canvas, {place.x + 4, place.y + 12, place.w - 8, place.h - 12}, view.preparation,
                    picture.spec, label);
  };
  if (titrant_made) made_up(layout::kTitrantBottle, picture.titrant_label);
  if (picture.outfit.pouring && !titrant_made && stands(Bottle::titrant)) {
    draw_bottle(canvas, {layout::kTitrantBottle, picture.titrant_label, palette::paper, palette::accent,
                         0.85F * bottle_level(picture)});
  }
  if (picture.outfit.titration) {
    if (made && !titrant_made)
      made_up(layout::kSampleBottle, picture.sample_label);
    else if (stands(Bottle::sample))
      draw_bottle(canvas, {layout::kSampleBottle, picture.sample_label, palette::paper, palette::good, 0.7F});
    draw_dropper_bottle(canvas, layout::kIndicator, picture.indicator);
    if (picture.spec.then)
      draw_dropper_bottle(canvas, layout::kSecondIndicator,
                          short_indicator_name(picture.spec.then->indicator.name));
  }
  if (!view.beaker_under) draw_beaker(canvas, layout::kBeakerAside, beaker_fill(view), beaker_word(picture));
  canvas.flush();
}

std::vector<int> still_key(const BenchPicture& picture) {
  constexpr float kSteps = 1000.0F;  // finer than a pixel
  const View& view = picture.view;
  return {view.coat_on,
          view.goggles_on,
          view.funnel_in,
          view.tile_laid,
          view.beaker_under,
          view.hands.wash > 0,
          view.hands.pour > 0 ? 1 + static_cast<int>(view.in_hand) : 0,
          pipette_in_hand(picture),
          static_cast<int>(kSteps * bottle_level(picture)),
          view.beaker_under ? 0 : static_cast<int>(kSteps * beaker_fill(view)),
          static_cast<int>(view.preparation.flask_cm3),
          view.preparation.inversions > 0};
}

void draw_moving_bench(Canvas& canvas, const BenchPicture& picture) {
  const View& view = picture.view;
  draw_far(canvas, picture);
  canvas.flush();
  if (!picture.outfit.liquid) return;
  if (view.tile_laid) draw_laid_tile(canvas, layout::kTileLaid);
  draw_spilt(canvas, view);
  const bool stands = !view.held_aslant, in_front = stands && view.over_edge;
  if (stands && !in_front) draw_tap_and_jet(canvas, picture);
  if (view.beaker_under) draw_beaker(canvas, beaker_under(picture), beaker_fill(view), beaker_word(picture));
  if (pipette_in_hand(picture)) draw_pipette_in_hand(canvas, picture);
  if (picture.outfit.glass()) draw_flask(canvas, picture);
  draw_washing(canvas, picture);
  if (in_front) draw_tap_and_jet(canvas, picture);
  if (stands) {
    draw_tap_handle(canvas, picture);
    draw_leak(canvas, picture);
  }
  draw_burette_in_hand(canvas, picture);
  canvas.flush();
}

}  // namespace halfdrop
