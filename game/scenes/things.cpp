#include "game/scenes/things.h"

#include <algorithm>

#include "game/level/say.h"
#include "game/scenes/bench_layout.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/senses_words.h"

namespace halfdrop {

namespace {

using layout::kJetX;
using layout::kNearUnits_cm;

/// A thing that is clicked.
Thing clicked(std::string name, const Rect& rect, std::string says, std::optional<Deed> deed,
              std::optional<Deed> other_deed = {}) {
  return {std::move(name), rect, std::move(says), deed, other_deed, Grip::none};
}

/// A thing that is held or dragged.
Thing held(std::string name, const Rect& rect, std::string says, Grip grip) {
  return {std::move(name), rect, std::move(says), {}, {}, grip};
}

Thing tap(const BenchPicture& picture) {
  return held("tap", {kJetX - 22, layout::tap_y(picture.spec, picture.view.hands.clamp_mm) - 92, 116, 116},
              say("hint.tap"), Grip::tap);
}

Thing jet(const BenchPicture& picture) {
  const float top = layout::tap_y(picture.spec, picture.view.hands.clamp_mm) + 26,
              tip = layout::tip_y(picture.spec, picture.view.hands.clamp_mm);
  const bool hangs = picture.view.hanging_cm3 > 0;
  const bool flask = picture.view.flask_under_jet && !picture.view.beaker_under;
  const std::string drop = flask ? say("hint.drop_flask") : say("hint.drop_beaker");
  return clicked("jet", {kJetX - 14, top, 28, tip + 16 - top}, hangs ? drop : say("hint.jet"),
                 hangs ? Deed::touch_off_drop : Deed::flick_jet);
}

Thing flask(const BenchPicture& picture) {
  const View& view = picture.view;
  const Point foot{layout::flask_x(view.hands.flask_x_cm), layout::kFootY};
  const auto half = static_cast<float>(picture.spec.flask.base_radius_cm) * kNearUnits_cm;
  const auto high = static_cast<float>(picture.spec.flask.height_cm) * kNearUnits_cm;
  const std::string name =
      view.flask_cm3 > 1
          ? say("hint.flask.colour", {{"colour", shown_colour(view.flask_colour, view.backdrop_colour)}})
          : say("hint.flask");
  const std::string says = view.flask_under_jet ? say("hint.flask.under_jet", {{"flask", name}})
                                                : say("hint.flask.aside", {{"flask", name}});
  return held("flask", {foot.x - half, foot.y - high, 2 * half, high + 4}, says, Grip::flask);
}

Thing beaker(const View& view, bool for_waste) {
  const std::string& name = for_waste ? say("hint.waste_beaker") : say("hint.beaker");
  if (view.beaker_under) {
    return clicked("beaker", layout::kBeakerUnder, say("hint.beaker.under", {{"beaker", name}}),
                   Deed::take_beaker_away, Deed::empty_beaker);
  }
  return clicked("beaker", layout::kBeakerAside, say("hint.beaker.aside", {{"beaker", name}}),
                 Deed::put_beaker_under, Deed::empty_beaker);
}

Thing tile(const View& view) {
  if (view.tile_laid) {
    return clicked("tile", layout::kTileLaid, say("hint.tile.laid"), Deed::take_tile_away);
  }
  return clicked("tile", layout::kTileAside, say("hint.tile.aside"), Deed::lay_tile);
}

Thing funnel(const BenchPicture& picture) {
  const layout::FarScale far = far_scale(picture);
  if (picture.view.funnel_in) {
    return clicked("funnel", {far.tube_x - 20, far.rim_y - 30, 40, 40}, say("hint.funnel.in"),
                   Deed::lift_out_funnel);
  }
  return clicked("funnel", layout::kFunnelAside, say("hint.funnel.aside"), Deed::put_in_funnel);
}

Thing pipette(const View& view, const Rect& rect) {
  if (view.pipette_cm3 > 0.5) {
    return clicked("pipette", rect, say("hint.pipette.full"), Deed::deliver_aliquot);
  }
  const bool water = view.in_hand == Bottle::water;
  return clicked("pipette", rect, water ? say("hint.pipette.water") : say("hint.pipette.sample"),
                 Deed::fill_pipette, pipette_rinse(view));
}

std::string words_by_hand(const PipetteView& pipette) {
  switch (pipette.place) {
    case PipettePlace::dipped:
      return say("hint.pipette.dipped");
    case PipettePlace::at_wall:
      return say("hint.pipette.at_wall");
    case PipettePlace::over_flask:
      return say("hint.pipette.free");
    case PipettePlace::aside:
      break;
  }
  if (pipette.outside_wet) return say("hint.pipette.wet");
  if (pipette.holds) return say("hint.pipette.holds");
  return say("hint.pipette.dip");
}

Deed other_by_hand(const View& view) {
  const PipetteView& pipette = view.pipette;
  if (pipette.place == PipettePlace::at_wall) return Deed::hold_pipette_free;
  if (pipette.place == PipettePlace::over_flask) return Deed::lean_pipette;
  return pipette.holds ? Deed::wipe_pipette : pipette_rinse(view);
}

Thing sample_by_hand(const View& view) {
  const bool dipped = view.pipette.place == PipettePlace::dipped;
  Thing bottle =
      clicked("sample", layout::kSampleBottle, dipped ? say("hint.sample.lift") : say("hint.sample.dip"),
              dipped ? Deed::lift_pipette : Deed::dip_pipette);
  bottle.pours = Deed::take_up_sample;
  return bottle;
}

/// Held: draws up, lets down, and over the flask lets run until it is held again.
Thing filler_by_hand(const PipetteView& pipette, const Rect& place) {
  const bool over = pipette.place == PipettePlace::at_wall || pipette.place == PipettePlace::over_flask;
  const bool dipped = pipette.place == PipettePlace::dipped;
  const Rect rect = place.h > place.w ? Rect{place.x - 6, place.y, place.w + 12, 50}
                                      : Rect{place.right() - 50, place.y, 50, place.h};
  const bool run_out = over && !pipette.holds;
  Thing filler = held("filler", rect,
                      dipped    ? say("hint.filler.draw")
                      : run_out ? say("hint.filler.run_out")
                      : over    ? say("hint.filler.run")
                                : say("hint.filler.let_down"),
                      Grip::filler);
  if (run_out) filler.other_deed = Deed::blow_out_pipette;
  return filler;
}

void add_pipette_by_hand(const BenchPicture& picture, std::vector<Thing>& all) {
  const View& view = picture.view;
  const bool in_hand = pipette_in_hand(picture);
  const Rect where = in_hand ? held_pipette(picture) : layout::kPipette.grown(6);
  if (in_hand) all.push_back(filler_by_hand(view.pipette, where));
  all.push_back(clicked("pipette", where, words_by_hand(view.pipette), next_of_pipette(view.pipette),
                        other_by_hand(view)));
  all.push_back(sample_by_hand(view));
}

Thing sample(const View& view) {
  Thing bottle = clicked("sample", layout::kSampleBottle, say("hint.sample"),
                         view.pipette_cm3 > 0.5 ? Deed::deliver_aliquot : Deed::fill_pipette);
  bottle.pours = Deed::take_up_sample;
  return bottle;
}

/// The rubber at the pipette's end, once it has been let run.
Thing filler(const Rect& pipette) {
  const bool upright = pipette.h > pipette.w;
  const Rect rect = upright ? Rect{pipette.x, pipette.y, pipette.w, 50}
                            : Rect{pipette.right() - 50, pipette.y, 50, pipette.h};
  return clicked("filler", rect, say("hint.filler"), Deed::blow_out_pipette);
}

Thing burette(const BenchPicture& picture) {
  const layout::FarScale far = far_scale(picture);
  return held("burette", {far.tube_x - 16, far.rim_y, 32, far.tap_y - far.rim_y}, say("hint.burette"),
              Grip::burette);
}

Thing clamp(const BenchPicture& picture) {
  const bool out = picture.view.over_edge;
  Thing thing =
      held("clamp", far_clamp(picture), out ? say("hint.clamp.out") : say("hint.clamp"), Grip::clamp);
  thing.other_deed = out ? Deed::swing_back : Deed::swing_over_edge;
  return thing;
}

Thing goggles(const View& view) {
  if (view.goggles_on) {
    return clicked("goggles", layout::kGoggles, say("hint.goggles.on"), Deed::take_off_goggles);
  }
  return clicked("goggles", layout::kGoggles, say("hint.goggles.off"), Deed::put_on_goggles);
}

Thing coat(const View& view) {
  return clicked("coat", layout::kCoat, view.coat_on ? say("hint.coat.on") : say("hint.coat.off"),
                 Deed::put_on_coat);
}

void add_bottle(const BenchPicture& picture, std::vector<Thing>& all) {
  Thing bottle = held("titrant", layout::kTitrantBottle,
                      picture.outfit.titration ? say("hint.titrant") : say("hint.water"), Grip::pour);
  if (picture.outfit.titration) bottle.pours = Deed::take_up_titrant;
  all.push_back(std::move(bottle));
}

void add_practised_pipette(const BenchPicture& picture, std::vector<Thing>& all) {
  const Rect where = pipette_in_hand(picture) ? held_pipette(picture) : layout::kPipette.grown(6);
  if (picture.view.pipette_cm3 < 0.5) all.push_back(filler(where));
  all.push_back(pipette(picture.view, where));
  all.push_back(sample(picture.view));
}

void add_titration(const BenchPicture& picture, std::vector<Thing>& all) {
  if (picture.view.pipette.by_hand) {
    add_pipette_by_hand(picture, all);
  } else {
    add_practised_pipette(picture, all);
  }
  all.push_back(clicked("indicator", layout::kIndicator, say("hint.indicator"), Deed::add_indicator));
  if (picture.spec.then)
    all.push_back(clicked("second-indicator", layout::kSecondIndicator, say("hint.second_indicator"),
                          Deed::add_second_indicator));
  Thing water = held("water", layout::kWashBottle, say("hint.wash_bottle"), Grip::wash);
  water.pours = Deed::take_up_water;
  all.push_back(std::move(water));
  all.push_back(clicked("sink", layout::kSink, say("hint.sink"), Deed::rinse_flask, Deed::empty_flask));
}

/// What else is there to be known.
void add_pieces(const BenchPicture& picture, std::vector<Thing>& all) {
  const Rect where = layout::kPipette.grown(6);
  for (Thing piece : {filler(where), pipette(picture.view, where)}) {
    piece.deed.reset();
    piece.other_deed.reset();
    piece.says = say("hint.only_known");
    all.push_back(std::move(piece));
  }
  all.push_back(held("water", layout::kWashBottle, say("hint.wash_bottle.wall"), Grip::wash));
}

void add_room(const View& view, std::vector<Thing>& all) {
  all.push_back(clicked("cloth", layout::kCloth,
                        view.spilt_cm3 > 0 ? say("hint.cloth.wet") : say("hint.cloth"), Deed::wipe_bench));
  all.push_back(goggles(view));
  all.push_back(coat(view));
}

void add_eye(const BenchPicture& picture, std::vector<Thing>& all) {
  const Hands& hands = picture.view.hands;
  all.push_back(held("eye-rail", EyePicture::rail(picture.outfit.eye), say("hint.eye_rail"), Grip::eye_rail));
  all.push_back(held("card", EyePicture::card_handle(picture.outfit.eye, hands.card_mm).grown(4),
                     say("hint.card"), Grip::card));
  all.push_back(
      held("eye-picture", EyePicture::frame(picture.outfit.eye), say("hint.eye_picture"), Grip::none));
  all.push_back(held("eye", far_eye(picture.spec, hands.eye_mm).grown(3), say("hint.eye"), Grip::far_eye));
}

}  // namespace

Deed next_of_pipette(const PipetteView& pipette) {
  if (pipette.place != PipettePlace::aside) return Deed::lift_pipette;
  return pipette.holds && pipette.seen_mm >= kPipetteTooLow_mm ? Deed::lean_pipette : Deed::dip_pipette;
}

double filler_strength(const PipetteView& pipette, bool gently) {
  if (pipette.place == PipettePlace::dipped) return gently ? -0.1 : -1.0;
  if (pipette.place == PipettePlace::aside) return gently ? 0.015 : 0.1;
  return gently ? 0.2 : 1.0;
}

Deed pipette_rinse(const View& view) {
  return view.in_hand == Bottle::water ? Deed::rinse_pipette_with_water : Deed::rinse_pipette_with_sample;
}

std::optional<Piece> piece_of(const Thing& thing) {
  if (thing.name == "water") return Piece::wash_bottle;
  if (thing.name == "flask") return Piece::flask;
  if (thing.name == "tile") return Piece::tile;
  if (thing.name == "beaker") return Piece::beaker;
  return piece_from_name(thing.name);
}

std::vector<Thing> things(const BenchPicture& picture) {
  const View& view = picture.view;
  const Outfit& outfit = picture.outfit;
  std::vector<Thing> all;
  if (outfit.liquid) {
    all = {tap(picture), jet(picture)};
    if (view.beaker_under) all.push_back(beaker(view, !outfit.beaker_takes_it));
    if (outfit.glass()) all.push_back(flask(picture));
    if (!view.beaker_under) all.push_back(beaker(view, !outfit.beaker_takes_it));
    if (outfit.glass()) all.push_back(tile(view));
    if (outfit.pouring) add_bottle(picture, all);
    if (outfit.titration) add_titration(picture, all);
    if (outfit.pieces) add_pieces(picture, all);
    add_room(view, all);
  }
  add_eye(picture, all);
  if (outfit.funnel()) all.push_back(funnel(picture));
  if (outfit.funnel()) all.push_back(clamp(picture));
  if (outfit.glass()) all.push_back(burette(picture));
  return all;
}

const Thing* thing_at(const std::vector<Thing>& all, Point point) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Thing& thing) { return thing.rect.contains(point); });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace halfdrop
