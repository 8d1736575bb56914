#pragma once
// Plain facts to draw or to mark. Made from a session, never changes it.

#include <optional>
#include <vector>

#include "game/session/session.h"
#include "physics/eye/sight_line.h"
#include "physics/flask/appearance.h"

namespace halfdrop {

/// The bench's sight geometry, once settled.
[[nodiscard]] const SightGeometry& sight_geometry(const BenchSpec& spec);

/// What an eye at its height reads off the scale.
struct ReadingSeen {
  double bottom_cm3 = 0.0;  ///< lower edge of the meniscus' dark curve: what is read
  double edge_cm3 = 0.0;    ///< its upper edge, where the liquid meets the glass in front
};
[[nodiscard]] ReadingSeen reading_seen(const BenchSpec& spec, const BenchState& state);

/// A drop on the flask's wall, or a wet trail down it.
struct ClingingView {
  double side = 1.0;       ///< -1 left wall, +1 right
  double height_cm = 0.0;  ///< above the flask's foot; a trail's middle
  double volume_cm3 = 0.0;
};

/// How long a drop's touching off is to be seen.
inline constexpr double kTouchShows_s = 0.8;

/// Seen so far below its line a pipette has to be drawn up again: half a millimetre is 0.008 cm3.
inline constexpr double kPipetteTooLow_mm = -0.5;

/// A pipette that is worked by hand.
struct PipetteView {
  bool by_hand = false;
  PipettePlace place = PipettePlace::aside;
  double level_mm = 0.0;      ///< above its line, truly; in the bulb as if it were all stem
  double seen_mm = 0.0;       ///< ... as the eye at its height sees it
  double eye_above_mm = 0.0;  ///< eye above the line
  double flow_cm3_s = 0.0;    ///< runs out at its tip
  bool holds = false;         ///< liquid, not only what clings
  bool outside_wet = false;   ///< its tip
  bool drains = false;        ///< has run out, and film still runs down
  bool froths = false;        ///< air was drawn in
};

/// How far an endpoint's change has come, in CIEDE2000.
struct ColourSeen {
  double flask_change = 0.0;   ///< all of the flask together, from the colour before any titrant
  double common_change = 0.0;  ///< ... its middling place: as many show more as less
  double streak_change = 0.0;  ///< ... its place that differs most from the colour before
  double common_left = 0.0;    ///< the middling place from the colour to come; of one that goes, what is left
  double streaks = 0.0;        ///< between its two most different places
};

/// A standard that is made up on the bench.
struct PreparationView {
  bool asked = false;
  double shown_g = 0.0;       ///< on the balance, with the weighing bottle on it
  double out_g = 0.0;         ///< solid out of that, truly (for the picture)
  bool solid_left = false;    ///< in the weighing bottle
  bool dry_solid = false;     ///< lies in the beaker, not dissolved
  double beaker_cm3 = 0.0;    ///< in the beaker, with what clings
  bool to_pour = false;       ///< more in the beaker than clings
  double flask_cm3 = 0.0;     ///< in the volumetric flask
  double level_mm = 0.0;      ///< above its line, truly, as if it were all neck
  double bottom_mm = 0.0;     ///< ... bottom of the meniscus as the eye at its height sees it
  double edge_mm = 0.0;       ///< ... its upper edge
  double eye_above_mm = 0.0;  ///< eye above the line
  bool in_neck = false;
  int inversions = 0;       ///< since anything last came in
  bool taken_from = false;  ///< the flask, after it was made up
};

/// The colours are those of the endpoint that is due (contents.h).
struct View : ColourSeen {
  double time_s = 0.0;
  Hands hands;
  bool coat_on = false, goggles_on = false, funnel_in = false, beaker_under = false, tile_laid = false;
  bool over_edge = false;  ///< the burette, swung out over the bench's edge

  Bottle in_hand = Bottle::titrant;  ///< that is poured from
  bool held_aslant = false;          ///< the burette, out of its clamps
  double column_cm3 = 0.0;           ///< in its tube
  double meniscus_cm3 = 0.0;         ///< where the meniscus truly stands on the scale (for the far view)
  double apparent_cm3 = 0.0;         ///< what the eye reads at its height: bottom of the meniscus
  double apparent_edge_cm3 = 0.0;    ///< ... and at its upper edge
  double eye_above_level_mm = 0.0;   ///< eye above the meniscus
  bool column_empty = true;          ///< no meniscus to be seen in the tube

  double flow_cm3_s = 0.0;     ///< leaves at the tip
  double plug = 0.0;           ///< where the tap's plug stands, whatever the hand does
  double jet_fill = 0.0;       ///< 0 full of air .. 1 full of liquid
  double jet_below = 0.0;      ///< of the jet's room, liquid below the air in it; 1: there is none
  double hanging_cm3 = 0.0;    ///< at the tip
  double plug_drop_cm3 = 0.0;  ///< hangs at the tap's plug, which leaks
  /// Of the last drop that let go there, below the plug: until it is on the bench.
  std::optional<double> plug_drop_fallen_cm;
  std::optional<double> touched_off_s;  ///< since a drop was touched off: for kTouchShows_s
  double full_drop_cm3 = 0.05;          ///< what falls of a drop that grew slowly
  bool streams = false;                 ///< no drop hangs: it runs in a stream
  std::vector<double> drops_fallen_cm;  ///< below the tip, one a falling drop

  bool flask_under_jet = false, flask_on_tile = false;
  double flask_cm3 = 0.0, flask_depth_cm = 0.0;
  LiquidLook flask_look;            ///< place by place; empty without liquid
  Rgb flask_colour;                 ///< of all of it together: linear light, through it, on what it stands on
  Rgb common_colour;                ///< of the middling place: as many show more as less
  Rgb streak_colour;                ///< where it differs most from that
  Rgb backdrop_colour;              ///< tile or bench alone
  std::optional<ColourSeen> first;  ///< of a first endpoint, once the second indicator is in too
  double wall_cm3 = 0.0;            ///< clinging to neck and wall
  std::vector<ClingingView> clinging;  ///< its drops
  std::vector<ClingingView> trails;    ///< its wet trails, a centimetre of wall each
  double swirl_turns = 0.0;            ///< where the hand is in its circle, 0..1
  double swirl_reach_cm = 0.0;         ///< how far the flask's foot is out from under its neck
  double wave_cm = 0.0;                ///< crest above the level, on the side that the foot is led to
  PipetteView pipette;
  PreparationView preparation;
  double beaker_cm3 = 0.0, spilt_cm3 = 0.0, pipette_cm3 = 0.0, funnel_cm3 = 0.0, bottle_cm3 = 0.0;
};

/// What a picture needs to see of the flask's liquid, and what a glance does: every so many columns and rows.
inline constexpr std::size_t kForAPicture = 2, kAtAGlance = 4;

[[nodiscard]] View view(const Session& session, std::size_t every = kAtAGlance);

/// What the demonstrator (or a person who cannot see the picture) perceives: never the state.
struct Senses : ColourSeen {
  double time_s = 0.0;
  double reading_cm3 = 0.0;         ///< what the eye sees at its height, to 0.01
  double edge_cm3 = 0.0;            ///< ... at the upper edge of the meniscus
  double eye_above_level_mm = 0.0;  ///< as the graduation rings show it
  bool meniscus_in_sight = false;
  bool jet_full = false;       ///< no air seen in the jet
  double hanging_share = 0.0;  ///< of a full drop
  double drops_per_s = 0.0;    ///< how fast it drips or runs, as seen
  int falling = 0;
  std::optional<ColourSeen> first;  ///< as View's
  bool flask_has_liquid = false, beaker_under = false, flask_under_jet = false, over_edge = false;
  bool wall_wet = false;  ///< drops cling above the liquid
  bool bench_wet = false;
  PipetteView pipette;          ///< levels to 0.1 mm, the true one not
  PreparationView preparation;  ///< the same; volumes to 1 cm3
};

[[nodiscard]] Senses senses(const View& view);

}  // namespace halfdrop
