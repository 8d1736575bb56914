#pragma once
// The bench as it stands all attempt long: glass, liquids, geometry. Constant once the attempt began.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "physics/burette/jet.h"
#include "physics/burette/tap.h"
#include "physics/chemistry/carbon_dioxide.h"
#include "physics/chemistry/indicator.h"
#include "physics/chemistry/solver.h"
#include "physics/eye/sight_geometry.h"
#include "physics/flask/stream_function.h"
#include "physics/light/spectrum.h"
#include "physics/units.h"

namespace halfdrop {

/// A liquid in a bottle: what the label says and what is truly in it.
struct BottleSpec {
  Substance substance;
  double label_mol_dm3 = 0.1;
  double true_mol_dm3 = 0.1;
  double volume_cm3 = 1000.0;
  double carbonate_mol_dm3 = 0.0;  ///< that old alkali has taken up from the air; its strength counts it in
  double carbonate_per_mol = 0.0;  ///< what the substance itself is made of; then not among its systems
};

/// What may be dissolved in a liquid of the bench, in the order of Settled's solvers. Without a second
/// indicator these have only the first four.
enum class Solute : std::size_t { titrant, sample, indicator, carbonic, second_indicator };
inline constexpr std::size_t kSolutes = 5;

/// Which of the endpoints of one flask; most flasks have only the first.
enum class Endpoint : std::uint8_t { first, second };

/// Where the same flask is titrated on, with another indicator added to it.
struct SecondEndpoint {
  Indicator indicator;
  double titrant_per_analyte = 2.0;  ///< from the beginning; more than at the first endpoint
  bool gains_colour = true;
};

/// What follows from the rest of the spec; see settle().
struct Settled {
  LiquidFlow liquid;              ///< the titrant, taken as water at the bench's temperature
  double capillary_mm = 0.0;      ///< sqrt(tension / (density g))
  double full_drop_cm3 = 0.0;     ///< what falls of a drop that grew slowly; 0: not settled yet
  double largest_drop_cm3 = 0.0;  ///< hangs at most; what it has more than a full drop stays at the tip
  Tick necking = 0;               ///< from there until the drop is off
  JetSettled jet;
  double stream_from_cm3_s = 0.0;        ///< from this flow on no drop hangs
  double saturated_co2_mol_dm3 = 0.0;    ///< carbon dioxide in water that has stood in air
  double air_over_water = 0.0;           ///< carbon dioxide in air over that in water, by volume
  double co2_diffusion_m2_s = 0.0;       ///< in water
  Solver as_it_stands{SolverOptions{}};  ///< Solute::carbonic: hydrogencarbonate and carbonate ion
  Solver complete{SolverOptions{}};      ///< Solute::carbonic: carbon dioxide and both ions
  carbon_dioxide::Kinetics kinetics{SolverOptions{}};
  IndicatorSpectra spectra;
  IndicatorSpectra second_spectra;  ///< where there is a second indicator
  SightGeometry sight;
  SightGeometry stem_sight;          ///< of the pipette's stem, its line in the place of the zero mark
  SightGeometry neck_sight;          ///< of a volumetric flask's neck, its line in the place of the zero mark
  std::vector<double> column_share;  ///< of the flask's cells (grid.h)
  StreamFunction stream{4};          ///< for the flask's rows
};

/// The tube and its scale. Lengths along the tube, zero mark at the top of the scale.
struct BuretteSpec {
  double nominal_cm3 = 50.0;
  double scale_length_mm =
      550.0;  ///< zero mark to last mark (reference: 500-600 mm for 50 cm3, from memory of ISO 385)
  double above_zero_cm3 = 4.0;   ///< room from the zero mark to the rim
  double below_scale_cm3 = 2.5;  ///< from the last mark to the tap
  double below_scale_mm = 60.0;
  double jet_cm3 = 0.25;             ///< tap and jet together (0.1-0.5 cm3, engineering guess)
  double jet_length_mm = 90.0;       ///< tap's axis to the tip
  double outer_half_width_mm = 6.4;  ///< axis to the printed scale
  /// Scale error: true volume from the zero mark to mark R is R + linear R/n + bow 4 R/n (1 - R/n), n
  /// nominal.
  double scale_linear_cm3 = 0.0;
  double scale_bow_cm3 = 0.0;
  double wet_cm3 = 0.0;  ///< water that it was left wet with
  double grease = 0.0;   ///< share of the wall that is greasy (wall_film.h)
  /// What follows; set by settle(). The scale allows for this film, as a line and a bow like its error.
  double film_linear_cm3 = 0.0;
  double film_bow_cm3 = 0.0;
  double film_per_capillarity_mm = 0.0;  ///< film's thickness over Ca^(2/3)
  double greasy_edge_mm_s = 0.0;         ///< how fast a liquid's edge retreats on greasy glass
  double greasy_film_mm = 0.0;           ///< film that a quicker meniscus leaves there
};

/// Tap plug and outlet, for the flow.
struct TapSpec {
  double bore_mm = 2.4;     ///< hole in plug and barrel
  double plug_mm = 7.0;     ///< diameter of the plug
  double channel_mm = 3.0;  ///< length of the narrow passage where plug meets barrel
  /// Fine groove filed round the plug from both edges of its bore, for drop by drop delivery (bench practice,
  /// from memory): how far it reaches, and how deep a right-angled V it is at the bore; it tapers to nothing.
  /// 0: none.
  double groove_degrees = 12.0;
  double groove_deep_mm = 0.32;
  double jet_bore_mm = 0.70;    ///< narrowest bore of the jet
  double jet_narrow_mm = 40.0;  ///< length of that bore
  double tip_outer_mm = 3.0;    ///< wetted diameter of the tip
  /// Faults of a tap (plug.h), none by default.
  double stiff_degrees = 0.0;   ///< hand ahead of the plug before it slips
  double loose_degrees = 0.0;   ///< play between hand and plug
  double leak_cm3_min = 0.0;    ///< seeps past the shut plug, column full to the zero mark
  double grease_in_bore = 0.0;  ///< share of the plug's bore and groove, by width, that grease closes
};

struct PipetteSpec {
  double nominal_cm3 = 25.0;
  double true_cm3 = 25.0;  ///< what it delivers when used rightly
  double wet_cm3 = 0.0;    ///< water that it was left wet with
  bool by_hand = false;    ///< worked by hand (pipette_by_hand.h), not by practised hands (pipette.h)
};

/// A standard that is weighed out and made up on the bench (preparation.h): what lies ready for it.
struct PreparationSpec {
  bool asked = false;  ///< otherwise the standard stands there made up
  double molar_mass_g_mol = 100.0;
  double solid_g = 0.0;                              ///< in the weighing bottle
  double bottle_g = 0.0;                             ///< the weighing bottle itself
  double flask_cm3 = 250.0, true_flask_cm3 = 250.0;  ///< volumetric flask: nominal, and at its line
  /// Error of the balance at loads of 0, 0.5, 1 g ..., on straight lines between them.
  std::vector<double> balance_error_g;
  std::uint64_t lumps_seed = 0;  ///< of the lumps in which the solid falls
};

/// Conical flask, cone with a neck.
struct FlaskSpec {
  double base_radius_cm = 3.5;
  double neck_radius_cm = 1.4;
  double height_cm = 12.0;
  double neck_length_cm = 3.0;
  double capacity_cm3 = 150.0;  ///< more runs over
  /// How finely the liquid is cut into cells (grid.h): 1 is 96 columns and 72 rows.
  double fineness = 1.0;

  /// A multiple of 8, and an even number.
  [[nodiscard]] std::size_t columns() const { return 8 * static_cast<std::size_t>(12.0 * fineness + 0.5); }
  [[nodiscard]] std::size_t rows() const { return 2 * static_cast<std::size_t>(36.0 * fineness + 0.5); }
};

/// A picture of a drill in reading: where meniscus, eye and card stand when it is turned up.
struct MeniscusPicture {
  double reading_cm3 = 0.0;  ///< on the printed scale
  double eye_mm = 0.0;       ///< as Hands::eye_mm
  double card_mm = 0.0;      ///< as Hands::card_mm
};

/// What a drill lays out ready, and how often its deed can be done; nothing in an exercise.
struct DrillSpec {
  std::vector<MeniscusPicture> pictures;  ///< the first stands there when the bench is laid out
  int volumes = 0;                        ///< to deliver, each closed by a deed
  std::optional<double>
      filled_to_cm3;  ///< mark that the burette stands at, jet clear, tap shut, beaker under
};

struct BenchSpec {
  double temperature_c = 20.0;
  BottleSpec titrant;
  BottleSpec sample;
  Indicator indicator;
  double indicator_drop_cm3 = 0.04;
  bool air = true;  ///< false: no carbon dioxide anywhere, for tests and for comparison with textbooks
  double titrant_per_analyte = 1.0;  ///< nu: mol of titrant per mol of analyte at the level's endpoint
  bool unknown_in_flask = true;
  bool gains_colour =
      true;  ///< the endpoint: the first sight of a colour that comes, the last of one that goes
  std::optional<SecondEndpoint> then;  ///< these three are then the first endpoint's
  BuretteSpec burette;
  TapSpec tap;
  PipetteSpec pipette;
  FlaskSpec flask;
  DrillSpec drill;
  PreparationSpec preparation;
  double pour_cm3_s = 6.0;           ///< titrant bottle tilted fully
  double funnel_keeps_cm3 = 0.15;    ///< wets the funnel and drips later (our own estimate)
  double wash_cm3_s = 1.5;           ///< wash bottle squeezed fully
  double rinse_cm3 = 30.0;           ///< water of each of the two rinses of a flask
  double rinse_left_cm3 = 0.3;       ///< what a shaken-out flask keeps (our own estimate)
  double wrong_rinse_cm3 = 15.0;     ///< of the sample, by whoever rinses a flask with it
  double tip_above_bench_cm = 11.2;  ///< jet's tip, just inside a flask's neck
  double eye_distance_mm = 300.0;    ///< eye to the printed scale
  Settled settled;

  /// The endpoint that ends a run.
  [[nodiscard]] Endpoint last_endpoint() const { return then ? Endpoint::second : Endpoint::first; }
  [[nodiscard]] double titrant_per_analyte_at(Endpoint endpoint) const {
    return endpoint == Endpoint::second ? then->titrant_per_analyte : titrant_per_analyte;
  }
  [[nodiscard]] bool gains_colour_at(Endpoint endpoint) const {
    return endpoint == Endpoint::second ? then->gains_colour : gains_colour;
  }
  /// c of the titre breakdown: label strength where the titrant is the standard, true strength where it is
  /// the unknown.
  [[nodiscard]] double breakdown_mol_dm3() const {
    return unknown_in_flask ? titrant.label_mol_dm3 : titrant.true_mol_dm3;
  }
  /// Strength of the flask's liquid in T*: true where it is the unknown, label where it is the standard.
  [[nodiscard]] double sample_in_titre_mol_dm3() const {
    return unknown_in_flask ? sample.true_mol_dm3 : sample.label_mol_dm3;
  }
};

/// Computes what follows from the other fields. Call once after they are set.
void settle(BenchSpec& spec);

}  // namespace halfdrop
