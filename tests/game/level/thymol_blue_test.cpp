#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/near.h"
#include "tests/support/shelf.h"

namespace halfdrop::test {

// Source: Zhang and Byrne, Mar. Chem. 52 (1996) 17, as public code for the pH of seawater has their equation:
// pK = 4.706 S/T + 26.3300 - 7.17218 log10 T - 0.017316 S. Here at S = 0, beyond its 30 to 40.
TEST_CASE("thymol blue's second constant moves with temperature as the published equation does") {
  const AcidSystem& thymol_blue = shelf().indicators.at("thymol blue").value.system;
  for (const double celsius : {5.0, 15.0, 25.0, 35.0}) {
    CAPTURE(celsius);
    const double published = -7.17218 * std::log10((celsius + 273.15) / 298.15);
    CHECK_NEAR(pk_at(thymol_blue, 1, celsius) - thymol_blue.pk[1], published, 1e-4);
  }
}

}  // namespace halfdrop::test
