#include "physics/flask/flow.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "physics/flask/stream_function.h"
#include "physics/units.h"
#include "tests/support/near.h"

using namespace halfdrop;

namespace {

/// sin(pi x) sin(pi z) on a square of side 1.
std::vector<float> one_whirl(const FlowBox& box, double strength) {
  std::vector<float> omega(box.nodes());
  for (std::size_t j = 1; j < box.rows; ++j) {
    for (std::size_t i = 1; i < box.columns; ++i) {
      const double x = static_cast<double>(i) / static_cast<double>(box.columns);
      const double z = static_cast<double>(j) / static_cast<double>(box.rows);
      omega[j * box.stride() + i] = static_cast<float>(strength * std::sin(kPi * x) * std::sin(kPi * z));
    }
  }
  return omega;
}

double energy(const Flow& flow) {
  const FlowBox& box = flow.box();
  double sum = 0.0;
  for (std::size_t j = 0; j < box.rows; ++j) {
    for (std::size_t i = 1; i < box.columns; ++i) {
      const auto u = static_cast<double>(flow.across_cm_s(i, j));
      sum += u * u;
    }
  }
  return sum;
}

/// A square whose lid is drawn along at 1 cm/s until nothing changes; speed across on the upright middle
/// line.
std::vector<double> drawn_by_a_lid(double reynolds, double until_s, std::size_t side) {
  const FlowBox own_box = even_box(side, side, 1.0, 1.0);
  const StreamFunction solver(own_box.rows);
  Flow flow(own_box, solver);
  FlowState state;
  FlowStep step;
  step.gap_brakes = false;
  step.lid_holds = true;
  step.lid_cm_s = 1.0;
  step.viscosity_cm2_s = 1.0 / reynolds;
  step.duration_s =
      std::fmin(0.24 * reynolds / static_cast<double>(side * side), 0.5 / static_cast<double>(side));
  for (double t = 0.0; t < until_s; t += step.duration_s) {
    flow.find_stream(state);
    flow.step(step, state);
  }
  flow.find_stream(state);
  std::vector<double> middle;
  for (std::size_t j = 0; j < side; ++j) middle.push_back(static_cast<double>(flow.across_cm_s(side / 2, j)));
  return middle;
}

double at_height(const std::vector<double>& rows, double height) {
  const double place = height * static_cast<double>(rows.size()) - 0.5;
  const auto low = static_cast<std::size_t>(place);
  const double part = place - static_cast<double>(low);
  return rows[low] + part * (rows[low + 1] - rows[low]);
}

struct Published {
  double height, speed;
};

void check_profile(const std::vector<double>& middle, const std::array<Published, 15>& published,
                   double within) {
  for (const Published& point : published) CHECK_NEAR(at_height(middle, point.height), point.speed, within);
}

}  // namespace

TEST_CASE("the stream function of a wave is that wave over its wave number squared") {
  const FlowBox box = even_box(64, 48, 1.0, 1.0);
  const std::vector<float> omega = one_whirl(box, 1.0);
  std::vector<float> psi(box.nodes());
  StreamFunction(box.rows).solve(box, omega, psi);
  // Exact for the five-point stencil: 4/h^2 sin^2(pi h/2) in each direction.
  const auto square = [](double cells) {
    const double s = std::sin(kPi / (2.0 * cells));
    return 4.0 * cells * cells * s * s;
  };
  const double expected = 1.0 / (square(64.0) + square(48.0));
  CHECK_NEAR(psi[24 * box.stride() + 32], expected, 1e-5 * expected);
  CHECK(psi[0] == 0.0F);
  CHECK(psi[48 * box.stride() + 10] == 0.0F);
}

TEST_CASE("where a vessel is shallow across, the stream function still answers its own equation") {
  FlowBox box = even_box(40, 24, 3.0, 1.0);
  for (std::size_t i = 0; i < box.columns; ++i) box.depth_between[i] = 0.3F + 0.02F * static_cast<float>(i);
  for (std::size_t i = 0; i <= box.columns; ++i) box.depth_at_node[i] = 0.29F + 0.02F * static_cast<float>(i);
  const std::vector<float> omega = one_whirl(box, 2.0);
  std::vector<float> psi(box.nodes());
  StreamFunction(box.rows).solve(box, omega, psi);
  const double dx2 = box.dx_cm() * box.dx_cm(), dz2 = box.dz_cm() * box.dz_cm();
  const auto at = [&](std::size_t i, std::size_t j) {
    return static_cast<double>(psi[j * box.stride() + i]);
  };
  for (const std::size_t j : {1U, 7U, 12U, 23U}) {
    for (const std::size_t i : {1U, 13U, 39U}) {
      const double across = (at(i, j) - at(i + 1, j)) / static_cast<double>(box.depth_between[i]) +
                            (at(i, j) - at(i - 1, j)) / static_cast<double>(box.depth_between[i - 1]);
      const double up =
          (2.0 * at(i, j) - at(i, j + 1) - at(i, j - 1)) / static_cast<double>(box.depth_at_node[i]);
      CHECK_NEAR(across / dx2 + up / dz2, static_cast<double>(omega[j * box.stride() + i]), 2e-3);
    }
  }
}

// Between two plates that hold, u = sin(2 pi z / h) is a solution of the equation of motion, with no pressure
// and no net flow; it decays as exp(-nu (2 pi / h)^2 t): heat equation, by hand.
TEST_CASE("shear between two plates decays at the analytic rate") {
  const FlowBox own_box = even_box(64, 64, 400.0, 1.0);
  const StreamFunction solver(own_box.rows);
  Flow flow(own_box, solver);
  FlowState state;
  state.vorticity.assign(flow.box().nodes(), 0.0F);
  for (std::size_t j = 0; j <= 64; ++j) {
    for (std::size_t i = 0; i <= 64; ++i)
      state.vorticity[j * flow.box().stride() + i] =
          static_cast<float>(-2.0 * kPi * std::cos(2.0 * kPi * static_cast<double>(j) / 64.0));
  }
  FlowStep step;
  step.gap_brakes = false;
  step.lid_holds = true;
  step.viscosity_cm2_s = 0.01;
  step.duration_s = 1.0 / 120.0;
  flow.find_stream(state);
  const double before = energy(flow);
  for (int i = 0; i < 120; ++i) {
    flow.step(step, state);
    flow.find_stream(state);
  }
  CHECK_NEAR(-0.5 * std::log(energy(flow) / before), 0.01 * 4.0 * kPi * kPi, 0.008);
}

// Stokes between front and back wall: a flow of depth d is braked by 12 nu / d^2 (Hele-Shaw, textbook
// result).
TEST_CASE("front and back wall brake a thin vessel's flow") {
  FlowBox box = even_box(32, 32, 40.0, 40.0);
  std::fill(box.depth_at_node.begin(), box.depth_at_node.end(), 0.5F);
  std::fill(box.depth_between.begin(), box.depth_between.end(), 0.5F);
  const FlowBox own_box = box;
  const StreamFunction solver(own_box.rows);
  Flow flow(own_box, solver);
  FlowState state{one_whirl(box, 0.1)};
  FlowStep step;
  step.viscosity_cm2_s = 0.01;
  step.duration_s = 1.0 / 60.0;
  flow.find_stream(state);
  const double before = energy(flow);
  for (int i = 0; i < 60; ++i) {
    flow.step(step, state);
    flow.find_stream(state);
  }
  CHECK_NEAR(-0.5 * std::log(energy(flow) / before), 12.0 * 0.01 / 0.25, 0.02);
}

// Ghia, Ghia and Shin, J. Comput. Phys. 48 (1982) 387, table I: speed across on the upright middle line (from
// memory).
TEST_CASE("a lid drawn over a square, Reynolds number 100") {
  check_profile(drawn_by_a_lid(100.0, 20.0, 64),
                {{{0.0547, -0.03717},
                  {0.0625, -0.04192},
                  {0.0703, -0.04775},
                  {0.1016, -0.06434},
                  {0.1719, -0.10150},
                  {0.2813, -0.15662},
                  {0.4531, -0.21090},
                  {0.5, -0.20581},
                  {0.6172, -0.13641},
                  {0.7344, 0.00332},
                  {0.8516, 0.23151},
                  {0.9531, 0.68717},
                  {0.9609, 0.73722},
                  {0.9688, 0.78871},
                  {0.9766, 0.84123}}},
                0.008);
}

TEST_CASE("a lid drawn over a square, Reynolds number 400") {
  check_profile(drawn_by_a_lid(400.0, 40.0, 96),
                {{{0.0547, -0.08186},
                  {0.0625, -0.09266},
                  {0.0703, -0.10338},
                  {0.1016, -0.14612},
                  {0.1719, -0.24299},
                  {0.2813, -0.32726},
                  {0.4531, -0.17119},
                  {0.5, -0.11477},
                  {0.6172, 0.02135},
                  {0.7344, 0.16256},
                  {0.8516, 0.29093},
                  {0.9531, 0.55892},
                  {0.9609, 0.61756},
                  {0.9688, 0.68439},
                  {0.9766, 0.75837}}},
                0.02);
}
