#pragma once
// One exercise, as its JSON file says it, and the bench it makes with a seed.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "game/level/fault.h"
#include "physics/bench/bench_spec.h"

namespace halfdrop {

/// A strength drawn by seed, uniformly, in steps of 0.0001 mol/dm3.
struct Range {
  double low = 0.0, high = 0.0;
};

struct LiquidSpec {
  std::string substance;           ///< name in assets/substances.json, the one that is shown
  std::string label;               ///< as on the bottle
  double label_mol_dm3 = 0.0;      ///< 0 for the unknown
  Range unknown_mol_dm3;           ///< used for the unknown only
  double carbonate_mol_dm3 = 0.0;  ///< that old alkali has taken up; its strength counts it in
  std::vector<Beside> also;        ///< in the same bottle, whatever the strength of the unknown
  std::string hazard;              ///< local rules' words for its label; empty: by the limits
};

/// A second unknown in the sample's bottle: it takes up titrant only between the first endpoint and the
/// second.
struct SecondUnknown {
  std::string name;    ///< as LiquidSpec::substance
  Range mol_dm3;       ///< drawn by a stream of its own
  double ratio = 1.0;  ///< titrant per mole of it
  Substance substance;
};

/// The same flask titrated on, with another indicator, to a second endpoint. The run's titre is the whole
/// one.
struct TitratedOn {
  std::string indicator;
  std::string endpoint_colour;
  bool endpoint_gains_colour = true;
  double endpoint_within_cm3 = 0.0;  ///< as Level's
  double ratio = 2.0;                ///< titrant per analyte, from the beginning
  std::optional<SecondUnknown> beside;
  Indicator indicator_data;
};

/// A standard that the player weighs out by difference and makes up in a volumetric flask: what stands in the
/// bottle of the standard otherwise.
struct StandardToMake {
  Range mass_g;                       ///< that serves
  double flask_cm3 = 250.0;           ///< nominal
  double flask_tolerance_cm3 = 0.15;  ///< class limit, ISO 1042: class A of 250 cm3
  double balance_linearity_g = 0.001;
  /// The weighing bottle as it was recorded before and after; while nothing is, a mass in the middle.
  std::optional<double> before_g, after_g;
};
inline constexpr const char* kBottleBefore = "standard/bottle before";
inline constexpr const char* kBottleAfter = "standard/bottle after";

/// A figure that the player is given, for the working: a mass weighed out, a blank.
struct Constant {
  std::string name;  ///< as steps call it
  double value = 0.0;
  std::string unit;
  std::string label;  ///< what it is, in words
};

/// A factor of a calculation step: a number, or a name (a level value such as "titrant_mol_dm3",
/// "aliquot_cm3", "ratio", "dilution", "volumetric_flask_cm3", a constant's, the cell of an earlier step such
/// as "calculation/mean titre", or of a weighing, "standard/bottle before").
using Factor = std::variant<double, std::string>;

/// One line of the working: product of `multiply` over product of `divide`, plus the sum of `plus`, minus
/// that of `minus`. Without `multiply` only the sums.
struct CalculationStep {
  std::string cell;    ///< e.g. "calculation/moles of alkali"
  std::string prompt;  ///< as printed on the paper
  std::string unit;
  std::vector<Factor> multiply, divide, plus, minus;
  int least_figures = 3;  ///< significant figures that must be written
};

/// |error| up to each limit scores that many of the points; limits ascend, points descend.
struct Band {
  double limit = 0.0;
  int points = 0;
};

/// A short exercise of one skill; its level has no titration. The burette holds water.
enum class DrillKind : std::uint8_t { read_meniscus, deliver_exactly, fill_without_air, know_apparatus };

/// Something to let into the beaker.
struct Delivery {
  enum class What : std::uint8_t { volume, one_drop, half_drop };
  What what = What::volume;
  double volume_cm3 = 0.0;  ///< used for a volume only
};

struct Drill {
  DrillKind kind = DrillKind::read_meniscus;
  int pictures = 0;                  ///< to read
  double to_cm3 = 0.05;              ///< what a reading is written to: 0.05 or 0.01
  std::vector<Delivery> deliveries;  ///< in order
  std::vector<Band> drop_bands;      ///< |volume - one drop or half a drop|, cm3
};

struct Level {
  std::string id;  ///< file's stem, e.g. "01-spirit-vinegar"
  std::string title, story, why;
  std::vector<std::string> cautions;
  std::vector<std::string> method;  ///< steps for who has not done it before; may be empty
  std::optional<Drill> drill;       ///< then sample, ratio, aliquot, indicator, calculation mean nothing
  double temperature_c = 20.0;
  LiquidSpec titrant, sample;
  bool unknown_in_flask = true;
  double ratio = 1.0;     ///< titrant per analyte
  double dilution = 1.0;  ///< undiluted over diluted strength
  double aliquot_cm3 = 25.0;
  std::string indicator;        ///< name in assets/indicators.json, the one that is shown
  std::string endpoint_colour;  ///< in words
  bool endpoint_gains_colour = true;
  double endpoint_within_cm3 = 0.0;  ///< how well a soft one can be told; 0: to half a drop
  std::optional<TitratedOn> then;    ///< ratio, indicator and endpoint are then the first one's
  BuretteSpec burette;               ///< scale errors still 0
  TapSpec tap;
  FlaskSpec flask;
  PipetteSpec pipette;                  ///< volumes still of no meaning
  double burette_tolerance_cm3 = 0.05;  ///< class limit, ISO 385
  double pipette_tolerance_cm3 = 0.03;  ///< class limit, ISO 648
  int accurate_runs = 5;                ///< columns on the sheet beside the trial
  bool filling_below_eye = false;       ///< the burette is to be filled with its top below eye level
  std::optional<StandardToMake> standard;
  std::vector<Constant> constants;           ///< story or prompts say them
  std::vector<CalculationStep> calculation;  ///< the last one is the result
  std::vector<Band> hand_bands;              ///< |true volume - equivalence|, cm3
  std::vector<Band> eye_bands;               ///< |reading - truth|, cm3

  std::string source_json;      ///< the level file's own text, compact: goes into the attempt
  std::string substances_json;  ///< the substances and indicators it uses, compact
  Substance titrant_substance, sample_substance;
  Indicator indicator_data;
};

/// How many readings a drill's paper has room for.
[[nodiscard]] int drill_readings(const Drill& drill);
/// "read the meniscus", "deliver exactly", "fill without air": as a level's file says it.
[[nodiscard]] std::string_view drill_name(DrillKind kind);

/// Where assets/ and levels/ are. HALFDROP_DATA overrides the folder the program was built with.
[[nodiscard]] std::string data_folder();

/// Reads a level file and the assets it names; every fault at once.
[[nodiscard]] Result<Level> read_level(const std::string& path);
/// The same from texts: the level's and the substances' (as in an attempt's first line).
[[nodiscard]] Result<Level> read_level_text(const std::string& level_json, const std::string& substances_json,
                                            const std::string& name_for_faults);

/// The same level with other values: `patch` is a JSON merge patch (RFC 7396) of its file.
[[nodiscard]] Result<Level> with_values(const Level& level, const std::string& patch);

/// The bench of a level for a seed: unknown and glass drawn within their limits; settled.
[[nodiscard]] BenchSpec bench_spec(const Level& level, std::uint64_t seed);
/// The same, not settled yet: quick, for those who only want to know what is drawn.
[[nodiscard]] BenchSpec drawn_bench_spec(const Level& level, std::uint64_t seed);

/// The sample with everything in it, a second unknown at so much.
[[nodiscard]] LiquidSpec sample_holding(const Level& level, double second_mol_dm3);
/// Titrant per analyte (nu) at the second endpoint, with so much of each unknown. Precondition: there is one.
[[nodiscard]] double ratio_at_second(const TitratedOn& then, double sample_mol_dm3, double second_mol_dm3);

/// The bench's bottle of a liquid, at a strength; what stands beside it is in its substance.
[[nodiscard]] BottleSpec bottle_of(const LiquidSpec& liquid, const Substance& substance, double mol_dm3);

/// A level value by the name that calculation steps use; nothing if unknown.
[[nodiscard]] tl::expected<double, std::string> level_value(const Level& level, const std::string& name);

}  // namespace halfdrop
