// Water against the reference programs of IAPWS's formulas as Debian packages them (python3-iapws), run here.

#include <doctest/doctest.h>
#include <stdio.h>

#include <cstdlib>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include "physics/chemistry/water.h"
#include "tests/support/near.h"
#include "tests/support/references.h"

namespace water = halfdrop::water;

namespace {

struct Row {
  double temperature_c, density_kg_m3, viscosity_pa_s, tension_n_m, pkw;
};

constexpr const char* kProgram = R"(
from iapws import IAPWS95
from iapws._iapws import _Kw, _Tension
for celsius in range(5, 41, 5):
    kelvin = celsius + 273.15
    water = IAPWS95(T=kelvin, P=0.101325)
    print(celsius, water.rho, water.mu, _Tension(kelvin), _Kw(water.rho, kelvin))
)";

/// Nothing where Python or its package is absent. Debian's own Python, for another would not find it.
std::vector<Row> rows_of_iapws() {
  const std::string command = "/usr/bin/python3 -B -c '" + std::string(kProgram) + "' 2>/dev/null";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
  std::string text;
  if (pipe != nullptr) {
    for (int c = std::fgetc(pipe.get()); c != EOF; c = std::fgetc(pipe.get())) text += static_cast<char>(c);
  }
  std::istringstream in(text);
  std::vector<Row> rows;
  Row row{};
  while (in >> row.temperature_c >> row.density_kg_m3 >> row.viscosity_pa_s >> row.tension_n_m >> row.pkw)
    rows.push_back(row);
  return rows;
}

}  // namespace

// Source: IAPWS-95 (density), R12-08 (viscosity), R1-76(2014) (surface tension) and R11-07 (ion product) as
// the Debian package python3-iapws computes them while this test runs, at 0.101325 MPa.
TEST_CASE("water is IAPWS's from 5 to 40 degrees, computed beside ours") {
  const std::vector<Row> rows = rows_of_iapws();
  if (!halfdrop::test::has_reference(!rows.empty(), "python3-iapws")) return;
  REQUIRE(rows.size() == 8);
  for (const Row& row : rows) {
    CAPTURE(row.temperature_c);
    CHECK_NEAR(water::density_kg_m3(row.temperature_c), row.density_kg_m3, 0.003);
    CHECK_NEAR(water::viscosity_pa_s(row.temperature_c) / row.viscosity_pa_s, 1.0, 0.003);
    CHECK_NEAR(water::surface_tension_n_m(row.temperature_c), row.tension_n_m, 1e-7);
    CHECK_NEAR(water::pkw(row.temperature_c), row.pkw, 1e-5);
  }
}
