#include "physics/flask/stirring.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "physics/flask/cell_rows.h"
#include "physics/flask/engulfment.h"
#include "physics/flask/landing.h"
#include "physics/flask/swirling.h"

namespace halfdrop {

namespace {

constexpr double kNoImpact_erg = 1e-3;
constexpr double kNoticed_s = 16.0 * kStir_s;  ///< how often slow things are looked at
constexpr Tick kSlowTicks = 16 * kStirTicks;
constexpr Tick kSpreadTicks = 2 * kStirTicks;
constexpr double kSpread_s = 2.0 * kStir_s;

double water_cm2_s(const BenchSpec& spec) {
  const LiquidFlow& liquid = spec.settled.liquid;
  return liquid.viscosity_pa_s / liquid.density_kg_m3 * 1e4;
}

/// kg/m3 that a parcel is heavier than water.
double rise_kg_m3(const BenchSpec& spec, const Parcel& parcel) {
  if (parcel.volume <= 0) return 0.0;
  const double mol_per_cm3 =
      spec.titrant.substance.density_rise_kg_m3 * parcel.amount_mol(Component::titrant) +
      spec.sample.substance.density_rise_kg_m3 * parcel.amount_mol(Component::analyte);
  return mol_per_cm3 / parcel.volume_cm3() * 1000.0;
}

/// Memory for one step's work: nothing in it outlives the step, nor is read before it is written.
struct Scratch {
  std::vector<double> volume, heavy;
  std::vector<float> upward, stream, strain2;
  Fluxes fluxes{GridSize{}};
};

Scratch& scratch() {
  thread_local Scratch one;
  one.stream.clear();
  one.strain2.clear();
  return one;
}

/// One step of a flask's liquid, from what it is to what it becomes.
class Stirring {
 public:
  Stirring(const BenchSpec& spec, BenchState& state)
      : spec_(spec),
        state_(state),
        flask_(state.flask),
        grid_{spec.flask.columns(), spec.flask.rows()},
        shape_(spec.flask, flask_liquid(state.ledger).volume_cm3()),
        scratch_(scratch()) {}

  void take() {
    turn();
    if (shape_.depth_cm() < kShallow_cm) {
      even_out(state_);
      flask_.flow = FlowState{};
    }
    if (flask_.even() && flask_.flow.at_rest()) return;
    const std::vector<double> down = lay_in();
    if (!flask_.flow.at_rest() || flask_.spin_rad_s > 0.0) flow(down);
    settle();
    if (flask_.even()) return;
    spread();
    if (state_.tick % kSlowTicks != 0) return;
    if (all_have_met()) forget_stages();
    if (is_even()) return even_out(state_);
    count_to_rest(Source::water, flask_.water);
    count_to_rest(Source::indicator, flask_.indicator);
    count_to_rest(Source::second_indicator, flask_.second_indicator);
  }

 private:
  /// The flask turns, and its liquid with it.
  void turn() {
    flask_.impact_erg =
        flask_.impact_erg < kNoImpact_erg ? 0.0 : flask_.impact_erg / (1.0 + kStir_s / kImpactLasts_s);
    flask_.spin_rad_s = spin_after(flask_.spin_rad_s, state_.hands.swirl, shape_.depth_cm(),
                                   shape_.mean_radius_cm(), kStir_s);
  }

  /// What came in since the last step goes into its cells; pushes the liquid there. Returns that push, cm/s2.
  std::vector<double> lay_in() {
    if (flask_.even()) return {};
    lay_out(flask_.laid_out);
    Landing landing(grid_, volume_, flask_);
    landing_ = landing.take(spec_, shape_);
    for (std::size_t k = 0; k < kSources; ++k)
      if (!flask_.field[k].empty()) fields_.push_back(&flask_.field[k]);
    return landing.pushed_cm_s();
  }

  /// Volumes of the cells of so much liquid.
  void lay_out(Quanta volume) {
    const std::vector<double>& shares = spec_.settled.column_share;
    if (volume == flask_liquid(state_.ledger).volume) return lay_out_cells(shape_, shares, volume_);
    const double cm3 = static_cast<double>(volume) * kVolumeQuantum_cm3;
    lay_out_cells(LiquidShape(spec_.flask, cm3), shares, volume_);
  }

  void flow(const std::vector<double>& pushed_cm_s) {
    Flow flow(flow_box(spec_.flask, shape_.volume_cm3()), spec_.settled.stream);
    flow.find_stream(flask_.flow);
    hold_back(flow);
    const std::vector<float> secondary = secondary_flow(flow.box(), flask_.spin_rad_s);
    stream_.assign(flow.stream().begin(), flow.stream().end());
    for (std::size_t i = 0; i < secondary.size(); ++i) stream_[i] += secondary[i];
    strain_of(flow);
    stride_ = flow.box().stride();
    if (flask_.flow.at_rest()) return;
    if (pushed_cm_s.empty() && fastest_cm_s_ < rest_cm_s()) {
      flask_.flow = FlowState{};
    } else {
      move_on(flow, pushed_cm_s);
    }
  }

  bool turns_fast() const { return flask_.spin_rad_s > kTurnsFast_rad_s; }
  double rest_cm_s() const { return turns_fast() ? kRestTurning_cm_s : kRest_cm_s; }

  void hold_back(Flow& flow) {
    fastest_cm_s_ = flow.fastest_cm_s();
    if (!turns_fast() || fastest_cm_s_ <= kHeldTurning_cm_s) return;
    for (float& node : flask_.flow.vorticity) node *= static_cast<float>(kHeldTurning_cm_s / fastest_cm_s_);
    flow.find_stream(flask_.flow);
    fastest_cm_s_ = kHeldTurning_cm_s;
  }

  /// In as many parts as the flow needs, asked anew at each; what pushes does so in the first.
  void move_on(Flow& flow, const std::vector<double>& pushed_cm_s) {
    FlowStep step;
    step.viscosity_cm2_s = water_cm2_s(spec_) + eddies_cm2_s(flask_.spin_rad_s, shape_.mean_radius_cm());
    std::vector<float>& upward = scratch_.upward;
    find_weight_cm_s2(upward);
    step.upward_cm_s2 = upward;
    double left_s = kStir_s;
    step.duration_s = next_part_s(flow, left_s);
    add_to(upward, pushed_cm_s, 1.0 / step.duration_s);
    flow.step(step, flask_.flow);
    add_to(upward, pushed_cm_s, -1.0 / step.duration_s);
    while ((left_s -= step.duration_s) > 0.0) {
      flow.find_stream(flask_.flow);
      step.duration_s = next_part_s(flow, left_s);
      flow.step(step, flask_.flow);
    }
  }

  /// All of what is left where the flow crosses less than kMostLeaves of a cell in it, else an even part.
  static double next_part_s(const Flow& flow, double left_s) {
    const double crossed = left_s * flow.courant_per_s(flow.stream());
    return left_s / (1.0 + std::floor(crossed / kMostLeaves));
  }

  /// What the difference in density from the rest pulls at.
  void find_weight_cm_s2(std::vector<float>& force) {
    scratch_.heavy.assign(grid_.cells(), 0.0);
    force.resize(grid_.cells());
    const double heaviest = 100.0 * kGravity_m_s2 / spec_.settled.liquid.density_kg_m3;
    const double rest = rise_kg_m3(spec_, rest_of(state_));
    const auto pull = [&](const Parcel& parcel) { return heaviest * (rise_kg_m3(spec_, parcel) - rest); };
    const double titrant = pull(flask_.titrant), water = pull(flask_.water),
                 indicator = pull(flask_.indicator), second = pull(flask_.second_indicator);
    const std::array<double, kSources> pulls{titrant, titrant, titrant, water, indicator, second};
    for (std::size_t k = 0; k < kSources; ++k) {
      const CellField& field = flask_.field[k];
      add_weight(field.data(), field.size(), pulls[k], scratch_.heavy.data());
    }
    if (flask_.even()) return std::fill(force.begin(), force.end(), 0.0F);
    push_up(scratch_.heavy.data(), volume_.data(), grid_.cells(), force.data());
  }

  static void add_to(std::vector<float>& upward, const std::vector<double>& pushed_cm_s, double per_s) {
    for (std::size_t i = 0; i < pushed_cm_s.size(); ++i)
      upward[i] -= static_cast<float>(pushed_cm_s[i] * per_s);
  }

  /// Rate of strain squared of each cell, from the flow and from the turning.
  void strain_of(const Flow& flow) {
    const auto turning = static_cast<float>(
        swirl_strain2_per_s2(flask_.spin_rad_s, shape_.mean_radius_cm(), water_cm2_s(spec_)));
    const auto struck =
        static_cast<float>(impact_strain2_per_s2(flask_.impact_erg, shape_.volume_cm3(), water_cm2_s(spec_)));
    strain2_.assign(grid_.cells(), turning + struck + kStillStrain2_per_s2);
    if (!flask_.flow.at_rest()) flow.add_strain2(strain2_);
  }

  /// The stream carries, and what came in makes room for itself.
  void settle() {
    if (flask_.even()) return;
    const Quanta now = flask_liquid(state_.ledger).volume;
    Fluxes& fluxes = scratch_.fluxes;
    pass(fluxes);
    if (!landing_.empty() || now != flask_.laid_out) make_room(now, fluxes);
    if (stream_.empty() && landing_.empty() && now == flask_.laid_out) return;
    carry_in_parts(fluxes);
    if (now != flask_.laid_out) lay_out(now);
    flask_.laid_out = now;
  }

  void pass(Fluxes& fluxes) {
    fluxes.across.resize(grid_.cells());
    fluxes.up.resize(grid_.cells());
    if (stream_.empty()) {
      std::fill(fluxes.across.begin(), fluxes.across.end(), 0.0);
      std::fill(fluxes.up.begin(), fluxes.up.end(), 0.0);
      return;
    }
    const std::size_t n = grid_.columns;
    for (std::size_t j = 0; j < grid_.rows; ++j) {
      const float* const psi = &stream_[j * stride_];
      pass_row(psi, psi + stride_, n, kStir_s / kVolumeQuantum_cm3, &fluxes.across[j * n], &fluxes.up[j * n]);
    }
  }

  /// Adds what brings the cells' volumes to those of the liquid that there is now.
  void make_room(Quanta now, Fluxes& fluxes) {
    const std::size_t n = grid_.columns, m = grid_.rows;
    const std::vector<double>& shares = spec_.settled.column_share;
    const std::vector<double> wanted = cell_quanta(spec_, now);
    double came = 0.0;
    for (const double cell : landing_) came += cell;
    const double even = (static_cast<double>(now) - came) / static_cast<double>(flask_.laid_out);
    double rises = 0.0;
    for (std::size_t j = 0; j < m; ++j) {
      double row = 0.0, row_wanted = 0.0, moves = 0.0;
      for (std::size_t i = 0; i < n; ++i) {
        volume_[j * n + i] *= even;
        if (!landing_.empty()) volume_[j * n + i] += landing_[j * n + i];
        row += volume_[j * n + i];
        row_wanted += wanted[j * n + i];
      }
      for (std::size_t i = 0; i < n; ++i) {
        fluxes.across[j * n + i] += moves;
        moves += volume_[j * n + i] - row * shares[i];
        if (j > 0) fluxes.up[j * n + i] += rises * shares[i];
      }
      rises += row - row_wanted;
    }
  }

  void carry_in_parts(Fluxes& fluxes) {
    const double leaves = most_that_leaves(grid_, volume_, fluxes);
    const int parts = 1 + static_cast<int>(std::min(leaves / kMostLeaves, 200.0));
    if (parts > 1) {
      multiply(fluxes.across.data(), fluxes.across.size(), 1.0 / parts);
      multiply(fluxes.up.data(), fluxes.up.size(), 1.0 / parts);
    }
    for (int part = 0; part < parts; ++part) carry(grid_, fluxes, volume_, fields_);
  }

  /// Eddies and shear while it turns, every other step; molecules alone every so often.
  void spread() {
    const bool turns = flask_.spin_rad_s > 0.0;
    const bool slow = state_.tick % kSlowTicks == 0;
    if (!flask_.of(Source::fresh).empty()) meet(turns || !stream_.empty(), slow);
    if (state_.tick % (turns ? kSpreadTicks : kSlowTicks) != 0) return;
    const double radius = shape_.mean_radius_cm();
    const double eddies = eddies_cm2_s(flask_.spin_rad_s, radius) + kDiffusion_cm2_s;
    spread_by(eddies + shear_cm2_s(flask_.spin_rad_s, radius), eddies, turns ? kSpread_s : kNoticed_s);
  }

  void meet(bool moves, bool slow) {
    if (!moves && !slow) return;
    if (strain2_.empty()) strain2_.assign(grid_.cells(), kStillStrain2_per_s2);
    engulf(strain2_, moves ? kStir_s : kNoticed_s, flask_.of(Source::fresh), flask_.of(Source::meeting),
           flask_.of(Source::titrant));
  }

  void spread_by(double across_cm2_s, double up_cm2_s, double duration_s) {
    const std::size_t n = grid_.columns, m = grid_.rows;
    const std::vector<double>& shares = spec_.settled.column_share;
    const double radius = shape_.mean_radius_cm(), height = shape_.row_height_cm();
    std::vector<double> between(n), below(m);
    // A face across is 2 R half_chord by the row's height, cells 2 R / n apart, over the row's pi R^2 by
    // height.
    for (std::size_t i = 1; i < n; ++i) {
      const double u = 2.0 * static_cast<double>(i) / static_cast<double>(n) - 1.0;
      between[i] =
          across_cm2_s * duration_s * half_chord(u) * static_cast<double>(n) / (kPi * radius * radius);
    }
    for (std::size_t j = 1; j < m; ++j) {
      const double r = shape_.radius_cm(static_cast<double>(j) * height);
      below[j] = up_cm2_s * duration_s * kPi * r * r / height;
    }
    std::vector<double> rows(shape_.row_cm3());
    for (double& row : rows) row /= kVolumeQuantum_cm3;
    for (double& face : below) face /= kVolumeQuantum_cm3;
    spread_across({shares, rows, between}, fields_);
    spread_up({shares, rows, below}, fields_);
  }

  /// Titrant that has not met all of its cell is no more than a trace of all.
  bool all_have_met() const {
    return static_cast<double>(total(flask_.of(Source::fresh)) + total(flask_.of(Source::meeting))) <=
           kEven * static_cast<double>(flask_.laid_out);
  }

  void forget_stages() {
    for (const Source stage : {Source::fresh, Source::meeting}) {
      CellField& field = flask_.of(stage);
      for (std::size_t i = 0; i < field.size(); ++i) flask_.of(Source::titrant)[i] += field[i];
      field = {};
    }
  }

  /// What makes up the same share of all but titrant everywhere is part of the rest.
  void count_to_rest(Source source, Parcel& parcel) {
    CellField& field = flask_.of(source);
    if (field.empty()) return;
    std::vector<double>& around = scratch_.heavy;
    around = volume_;
    for (const Source stage : {Source::fresh, Source::meeting, Source::titrant}) {
      const CellField& titrant = flask_.of(stage);
      for (std::size_t i = 0; i < titrant.size(); ++i) around[i] -= titrant[i];
    }
    double all = 0.0;
    for (const double cell : around) all += cell;
    const double mean = static_cast<double>(total(field)) / all;
    for (std::size_t i = 0; i < field.size(); ++i)
      if (std::fabs(field[i] - mean * around[i]) > kEven * volume_[i]) return;
    field = {};
    parcel = {};
  }

  /// Nothing is still meeting, and no cell's share of anything differs.
  bool is_even() const {
    if (!flask_.of(Source::fresh).empty()) return false;
    const double all = static_cast<double>(flask_.laid_out);
    for (const CellField& field : flask_.field) {
      if (field.empty()) continue;
      const double mean = static_cast<double>(total(field)) / all;
      for (std::size_t i = 0; i < field.size(); ++i)
        if (std::fabs(field[i] - mean * volume_[i]) > kEven * volume_[i]) return false;
    }
    return true;
  }

  const BenchSpec& spec_;
  BenchState& state_;
  FlaskLiquid& flask_;
  GridSize grid_;
  LiquidShape shape_;
  Scratch& scratch_;
  std::vector<double>& volume_ = scratch_.volume;
  std::vector<float>&stream_ = scratch_.stream, &strain2_ = scratch_.strain2;
  std::vector<double> landing_;
  std::vector<CellField*> fields_;
  std::size_t stride_ = 0;
  double fastest_cm_s_ = 0.0;  ///< of the flow
};

}  // namespace

FlowBox flow_box(const FlaskSpec& flask, double volume_cm3) {
  const LiquidShape shape(flask, volume_cm3);
  FlowBox box{flask.columns(), flask.rows(), 2.0 * shape.mean_radius_cm(), shape.depth_cm(), {}, {}};
  const auto depth = [&](double i) {
    return static_cast<float>(2.0 * shape.mean_radius_cm() *
                              half_chord(2.0 * i / static_cast<double>(flask.columns()) - 1.0));
  };
  for (std::size_t i = 0; i < box.columns; ++i)
    box.depth_between.push_back(depth(static_cast<double>(i) + 0.5));
  for (std::size_t i = 0; i <= box.columns; ++i) box.depth_at_node.push_back(depth(static_cast<double>(i)));
  box.depth_at_node.front() = box.depth_at_node.back() = box.depth_between.front();
  return box;
}

std::vector<double> cell_quanta(const BenchSpec& spec, Quanta volume) {
  std::vector<double> cells;
  lay_out_cells(LiquidShape(spec.flask, static_cast<double>(volume) * kVolumeQuantum_cm3),
                spec.settled.column_share, cells);
  return cells;
}

void stir(const BenchSpec& spec, BenchState& state) {
  if (state.tick % kStirTicks != 0) return;
  FlaskLiquid& flask = state.flask;
  if (flask.even() && flask.flow.at_rest() && flask.spin_rad_s == 0.0 && flask.impact_erg == 0.0 &&
      state.hands.swirl == 0.0)
    return;
  if (flask_liquid(state.ledger).volume <= 0) {
    flask = FlaskLiquid{};
    return;
  }
  Stirring(spec, state).take();
}

}  // namespace halfdrop
