#include "game/scenes/things.h"

#include <algorithm>

#include "game/scenes/bench_layout.h"
#include "game/scenes/eye_picture.h"
#include "game/scenes/senses_words.h"

namespace halfdrop {

namespace {

using layout::kJetX;
using layout::kNearUnits_cm;

std::string spaced(std::string words) {
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

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
  return held(
      "tap", {kJetX - 22, layout::tap_y(picture.spec, picture.view.hands.clamp_mm) - 92, 116, 116},
      "Tap: drag the handle, or [←] shut and [→] open (finely with Shift); [S] snaps it shut, [D] goes back",
      Grip::tap);
}

Thing jet(const BenchPicture& picture) {
  const float top = layout::tap_y(picture.spec, picture.view.hands.clamp_mm) + 26,
              tip = layout::tip_y(picture.spec, picture.view.hands.clamp_mm);
  const bool hangs = picture.view.hanging_cm3 > 0;
  const bool flask = picture.view.flask_under_jet && !picture.view.beaker_under;
  const std::string drop =
      flask ? "A drop hangs: click or [O] touches it off on the flask's neck; then rinse it down [W]"
            : "A drop hangs at the tip: click to touch it off on the beaker [O]";
  return clicked("jet", {kJetX - 14, top, 28, tip + 16 - top},
                 hangs ? drop : "The jet, below the tap: click to flick it with a finger [J]",
                 hangs ? Deed::touch_off_drop : Deed::flick_jet);
}

Thing flask(const BenchPicture& picture) {
  const View& view = picture.view;
  const Point foot{layout::flask_x(view.hands.flask_x_cm), layout::kFootY};
  const auto half = static_cast<float>(picture.spec.flask.base_radius_cm) * kNearUnits_cm;
  const auto high = static_cast<float>(picture.spec.flask.height_cm) * kNearUnits_cm;
  std::string says = "Flask";
  if (view.flask_cm3 > 1) says += ", " + spaced(colour_words(view.flask_colour, view.backdrop_colour));
  says += view.flask_under_jet ? ": drag it (up: lift it) or [F]; swirl: hold [Space] or the right button"
                               : ": drag it under the jet or [F]; empty [X], rinse with water [V]";
  return held("flask", {foot.x - half, foot.y - high, 2 * half, high + 4}, says, Grip::flask);
}

Thing beaker(const View& view, bool for_waste) {
  const std::string name = for_waste ? "Waste beaker" : "Beaker";
  if (view.beaker_under) {
    return clicked("beaker", layout::kBeakerUnder,
                   name + ": click takes it away [B]; right button pours it out [Shift+B]",
                   Deed::take_beaker_away, Deed::empty_beaker);
  }
  return clicked("beaker", layout::kBeakerAside,
                 name + ": click puts it under the jet [B]; right button pours it out [Shift+B]",
                 Deed::put_beaker_under, Deed::empty_beaker);
}

Thing tile(const View& view) {
  if (view.tile_laid) {
    return clicked("tile", layout::kTileLaid, "White tile: colour shows best on it; click takes it away [L]",
                   Deed::take_tile_away);
  }
  return clicked("tile", layout::kTileAside, "White tile: click lays it under the jet [L]", Deed::lay_tile);
}

Thing funnel(const BenchPicture& picture) {
  const layout::FarScale far = far_scale(picture);
  if (picture.view.funnel_in) {
    return clicked("funnel", {far.tube_x - 20, far.rim_y - 30, 40, 40},
                   "Funnel in the burette: click lifts it out [N]", Deed::lift_out_funnel);
  }
  return clicked("funnel", layout::kFunnelAside, "Funnel: click puts it in the burette [N]",
                 Deed::put_in_funnel);
}

Thing pipette(const View& view, const Rect& rect) {
  if (view.pipette_cm3 > 0.5) {
    return clicked("pipette", rect, "Pipette, filled to its line: click lets it run into the flask [A]",
                   Deed::deliver_aliquot);
  }
  const bool water = view.in_hand == Bottle::water;
  return clicked("pipette", rect,
                 std::string("Pipette: click fills it to its line [A]; right button rinses it with ") +
                     (water ? "water" : "sample") + " [Y]",
                 Deed::fill_pipette, pipette_rinse(view));
}

std::string words_by_hand(const PipetteView& pipette) {
  switch (pipette.place) {
    case PipettePlace::dipped:
      return "Pipette, its tip in the sample: click lifts it out [A]";
    case PipettePlace::at_wall:
      return "Pipette, its tip on the neck's wall: click takes it away [A]; right button holds it free";
    case PipettePlace::over_flask:
      return "Pipette, its tip free: click takes it away [A]; right button leans it on the wall";
    case PipettePlace::aside:
      break;
  }
  if (pipette.outside_wet)
    return "Pipette, wet outside: right button wipes it [M]; click holds it over the flask [A]";
  if (pipette.holds) return "Pipette: click leans it on the flask's neck [A]; let it down at the filler [Z]";
  return "Pipette: click dips it into the sample [A]; right button rinses it [Y]";
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
      clicked("sample", layout::kSampleBottle,
              dipped ? "Sample: click lifts the pipette out [A]; the right button pours it into the burette"
                     : "Sample: click dips the pipette in [A]; the right button pours it into the burette",
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
  Thing filler =
      held("filler", rect,
           dipped    ? "Filler: hold the button or [Z] to draw up; gently with Shift or the right button"
           : run_out ? "Filler: what is left stays in the tip; the right button would blow it out [U]"
           : over    ? "Filler: click or [Z] lets it run, or stops it"
                     : "Filler: hold the button or [Z] to let it down; gently with Shift or the right button",
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
  Thing bottle = clicked("sample", layout::kSampleBottle,
                         "Sample: click fills the pipette [A]; the right button pours it into the burette",
                         view.pipette_cm3 > 0.5 ? Deed::deliver_aliquot : Deed::fill_pipette);
  bottle.pours = Deed::take_up_sample;
  return bottle;
}

/// The rubber at the pipette's end, once it has been let run.
Thing filler(const Rect& pipette) {
  const bool upright = pipette.h > pipette.w;
  const Rect rect = upright ? Rect{pipette.x, pipette.y, pipette.w, 50}
                            : Rect{pipette.right() - 50, pipette.y, 50, pipette.h};
  return clicked("filler", rect, "Filler: squeezing it blows the last drop out of the tip [U]",
                 Deed::blow_out_pipette);
}

Thing burette(const BenchPicture& picture) {
  const layout::FarScale far = far_scale(picture);
  return held("burette", {far.tube_x - 16, far.rim_y, 32, far.tap_y - far.rim_y},
              "Burette: hold the button or [E] to take it out, aslant, and turn it about: so it is rinsed",
              Grip::burette);
}

Thing clamp(const BenchPicture& picture) {
  const bool out = picture.view.over_edge;
  Thing thing =
      held("clamp", far_clamp(picture),
           std::string("Clamps: drag to raise or lower the burette [Ctrl+↑] [Ctrl+↓]; right button ") +
               (out ? "swings it back over the bench [Home]" : "swings it out over the bench's edge [Home]"),
           Grip::clamp);
  thing.other_deed = out ? Deed::swing_back : Deed::swing_over_edge;
  return thing;
}

Thing goggles(const View& view) {
  if (view.goggles_on) {
    return clicked("goggles", layout::kGoggles, "You wear eye protection: click takes it off [G]",
                   Deed::take_off_goggles);
  }
  return clicked("goggles", layout::kGoggles, "Eye protection: click puts it on [G]", Deed::put_on_goggles);
}

Thing coat(const View& view) {
  return clicked(
      "coat", layout::kCoat,
      view.coat_on ? "You wear your coat, buttoned" : "Lab coat: click puts it on and buttons it [C]",
      Deed::put_on_coat);
}

void add_bottle(const BenchPicture& picture, std::vector<Thing>& all) {
  Thing bottle = held("titrant", layout::kTitrantBottle,
                      std::string(picture.outfit.titration ? "Titrant" : "Water") +
                          ": hold the button or [P] to pour it into the burette; gently with Shift or the "
                          "right button",
                      Grip::pour);
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
  all.push_back(clicked("indicator", layout::kIndicator, "Indicator: click adds one drop to the flask [I]",
                        Deed::add_indicator));
  Thing water =
      held("water", layout::kWashBottle,
           "Wash bottle: hold the button or [W] to wash down; the right button pours water into the "
           "burette",
           Grip::wash);
  water.pours = Deed::take_up_water;
  all.push_back(std::move(water));
  all.push_back(clicked("sink", layout::kSink,
                        "Sink: click rinses the flask with water [V]; right button only empties it [X]",
                        Deed::rinse_flask, Deed::empty_flask));
}

void add_room(const View& view, std::vector<Thing>& all) {
  all.push_back(clicked(
      "cloth", layout::kCloth,
      view.spilt_cm3 > 0 ? "Cloth: the bench is wet, click mops it up [M]" : "Cloth: for mopping up [M]",
      Deed::wipe_bench));
  all.push_back(goggles(view));
  all.push_back(coat(view));
}

void add_eye(const BenchPicture& picture, std::vector<Thing>& all) {
  const Hands& hands = picture.view.hands;
  all.push_back(held("eye-rail", EyePicture::rail(picture.outfit.eye),
                     "Your eye: drag it, turn the wheel, or [↑] [↓] (10 mm with Shift); level when the far "
                     "half of a ring hides behind the near",
                     Grip::eye_rail));
  all.push_back(held("card", EyePicture::card_handle(picture.outfit.eye, hands.card_mm).grown(4),
                     "Reading card, white over dark: drag it until its dark edge stands just below the "
                     "meniscus [K]",
                     Grip::card));
  all.push_back(held("eye-picture", EyePicture::frame(picture.outfit.eye),
                     "What your eye sees: turn the wheel to move it; [K] holds the card just below",
                     Grip::none));
  all.push_back(held("eye", far_eye(picture.spec, hands.eye_mm).grown(3),
                     "Your eye: drag it, turn the wheel, or [↑] [↓] (10 mm with Shift)", Grip::far_eye));
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

std::vector<Thing> things(const BenchPicture& picture) {
  const View& view = picture.view;
  const Outfit& outfit = picture.outfit;
  std::vector<Thing> all;
  if (outfit.liquid) {
    all = {tap(picture), jet(picture)};
    if (view.beaker_under) all.push_back(beaker(view, !outfit.beaker_takes_it));
    if (outfit.titration) all.push_back(flask(picture));
    if (!view.beaker_under) all.push_back(beaker(view, !outfit.beaker_takes_it));
    if (outfit.titration) all.push_back(tile(view));
    if (outfit.pouring) add_bottle(picture, all);
    if (outfit.titration) add_titration(picture, all);
    add_room(view, all);
  }
  add_eye(picture, all);
  if (outfit.pouring) all.push_back(funnel(picture));
  if (outfit.pouring) all.push_back(clamp(picture));
  if (outfit.titration) all.push_back(burette(picture));
  return all;
}

const Thing* thing_at(const std::vector<Thing>& all, Point point) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Thing& thing) { return thing.rect.contains(point); });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace halfdrop
