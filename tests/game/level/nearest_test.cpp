#include "game/level/nearest.h"

#include <doctest/doctest.h>

#include <array>

using namespace halfdrop;

TEST_SUITE("nearest name") {
  TEST_CASE("edit distances are those worked out by hand") {
    CHECK(edit_distance("", "") == 0);
    CHECK(edit_distance("kitten", "sitting") == 3);  // the textbook example of Levenshtein's distance
    CHECK(edit_distance("abc", "") == 3);
    CHECK(edit_distance("tirant", "titrant") == 1);
    CHECK(edit_distance("oitar", "ratio") == 4);
    CHECK(edit_distance("raito", "ratio") == 1);
  }
  TEST_CASE("a slip finds its name; another word finds nothing") {
    const std::array<std::string_view, 3> known = {"titrant", "sample", "ratio"};
    CHECK(nearest("titrent", known) == "titrant");
    CHECK(nearest("Sample", known) == "sample");
    CHECK(nearest("burette", known).empty());
    CHECK(nearest("tatrent", known) == "titrant");
    CHECK(nearest("tatnert", known).empty());  // a third of seven letters is two
    const std::array<std::string_view, 1> long_name = {"potassium hydrogen phthalate"};
    CHECK(nearest("potasium hydrogn phthalate", long_name) == "potassium hydrogen phthalate");
    CHECK(nearest("potasium hydrogn phtalate", long_name).empty());  // three off are no slip
    CHECK(nearest("", known).empty());
    CHECK(nearest(std::string(100000, 'a'), known).empty());
    CHECK(did_you_mean("sampel", known) == "; did you mean \"sample\"?");
  }
}
