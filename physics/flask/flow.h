#pragma once
// Flow of the flask's liquid in the upright plane through its axis, averaged over its depth (the chord): as
// vorticity and stream function of depth times velocity. The surface is a lid without friction; bottom and
// sides hold the liquid. Front and back wall brake it as in a narrow gap, 12 nu / d^2. Left out: what turns
// about the upright axis (swirling.h says what stands for it), waves, and that the flask narrows upwards (the
// flow is that of a vessel of the same volume and depth whose sides are upright; transport knows the real
// outline).

#include <span>
#include <vector>

#include "physics/flask/stream_function.h"

namespace halfdrop {

/// One step's givens. Spans may be empty.
struct FlowStep {
  double duration_s = 1.0 / 60.0;
  double viscosity_cm2_s = 0.01;          ///< molecular and eddy
  double lid_cm_s = 0.0;                  ///< speed of the lid to the right ...
  bool lid_holds = false;                 ///< ... where it holds the liquid; otherwise it slips
  bool gap_brakes = true;                 ///< front and back wall
  std::span<const float> upward_cm_s2{};  ///< force per mass, by cell (row by row, columns a row)
};

/// The flow alone; everything else follows from it.
struct FlowState {
  std::vector<float> vorticity;  ///< 1/s at the box's nodes; empty: at rest

  [[nodiscard]] bool at_rest() const { return vorticity.empty(); }
  friend bool operator==(const FlowState&, const FlowState&) = default;
};

class Flow {
 public:
  /// `solver` for the box's rows; it must outlive the flow.
  Flow(FlowBox box, const StreamFunction& solver);

  [[nodiscard]] const FlowBox& box() const { return box_; }
  /// Works out stream() of the state. Must have been called before the state is stepped.
  void find_stream(const FlowState& state);
  /// cm3/s at the nodes: what flows through between two nodes is the difference.
  [[nodiscard]] std::span<const float> stream() const { return stream_; }
  /// Speeds that follow from stream(), cm/s: across at node (i, row j), up at (column i, node j).
  [[nodiscard]] float across_cm_s(std::size_t i, std::size_t j) const;
  [[nodiscard]] float up_cm_s(std::size_t i, std::size_t j) const;
  /// Adds the rate of strain squared (1/s2) of each cell, row by row: 2 (du/dx)^2 + 2 (dw/dz)^2 + (du/dz +
  /// dw/dx)^2.
  void add_strain2(std::span<float> cells) const;
  /// Largest share of a node's own volume that flows through one of its faces in a second.
  [[nodiscard]] double courant_per_s(std::span<const float> stream) const;
  /// The largest of the speeds that follow from stream().
  [[nodiscard]] float fastest_cm_s() const;
  /// Forces, viscosity and walls, then the vorticity goes along with the flow. Precondition: the Courant
  /// number of stream() is below 1.
  void step(const FlowStep& step, FlowState& state);

 private:
  void take_speeds();
  void push(const FlowStep& step);
  void hold_back_across(const FlowStep& step, float number);
  void spread_across(float number);
  void spread_up(const FlowStep& step, double number);
  void curl(const FlowStep& step, std::span<float> vorticity) const;
  void carry(const FlowStep& step, std::span<float> vorticity) const;

  FlowBox box_;
  const StreamFunction& solver_;
  std::vector<float> stream_, across_, up_;
};

}  // namespace halfdrop
