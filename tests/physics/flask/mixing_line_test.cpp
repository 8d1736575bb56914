#include "physics/flask/mixing_line.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <span>

#include "physics/flask/contents.h"
#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop {

using namespace test;

namespace {

FormShares solved(const BenchSpec& spec, const Solutes& from, const Solutes& into, double share) {
  Solutes mixture{};
  for (std::size_t i = 0; i < mixture.size(); ++i) mixture[i] = (1.0 - share) * from[i] + share * into[i];
  return indicator_forms(spec, spec.settled.as_it_stands.solve(std::span<const double>(mixture).first(4)));
}

}  // namespace

// Against the solver itself, from acid through equivalence at a half to pure alkali.
TEST_CASE("a line of mixtures gives the solver's forms of the indicator, most closely asked where it jumps") {
  const BenchSpec spec = titration_bench();
  const Solutes acid{0.0, 0.1, 3e-5, 0.0}, alkali{0.1, 0.0, 0.0, 0.0};
  MixingLine line(spec, acid, alkali);
  double worst = 0.0;
  const auto ask = [&](double share) {
    const FormShares there = line.at(share)[0], right = solved(spec, acid, alkali, share);
    for (std::size_t form = 0; form < there.size(); ++form)
      worst = std::max(worst, std::fabs(there[form] - right[form]));
  };
  for (int i = 0; i <= 1000; ++i) ask(i / 1000.0);
  for (int i = -1000; i <= 1000; ++i) ask(0.5 + 3e-7 * i);
  for (int i = -1000; i <= 1000; ++i) ask(0.5 + 1e-5 * i);
  CHECK(worst <= 2.0 * MixingLine::kFormsOff);
  CHECK(worst > 0.0);
  CHECK(line.solved() < 1000);  // of 5003
}

}  // namespace halfdrop
