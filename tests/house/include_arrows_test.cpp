#include "tests/house/include_arrows.h"

#include <doctest/doctest.h>

namespace halfdrop::house {
namespace {

bool may_include(const std::string& path, const std::string& line) {
  const SourceFile file{path, "#pragma once\n" + line + "\n"};
  REQUIRE(includes_of(file).size() == 1);
  return objections(file).empty();
}

}  // namespace

TEST_CASE("every include in the project points the way of the house") {
  const std::vector<SourceFile> files = sources_below({"physics", "game"});
  REQUIRE(files.size() > 30);
  for (const SourceFile& file : files) {
    for (const std::string& objection : objections(file)) FAIL_CHECK(objection);
  }
}

TEST_CASE("only an include is taken for one") {
  const SourceFile file{"physics/a.h",
                        "// #include <a>\n#included <b>\n#define include <c>\n#include D\n#include \"\"\n"
                        "\t# \tinclude<e/f.h>  // said\n#include \"g.h\"\n"};
  const std::vector<Include> includes = includes_of(file);
  REQUIRE(includes.size() == 2);
  CHECK(includes[0].line == 6);
  CHECK(includes[0].name == "e/f.h");
  CHECK_FALSE(includes[0].quoted);
  CHECK(includes[1].line == 7);
  CHECK(includes[1].name == "g.h");
  CHECK(includes[1].quoted);
}

TEST_CASE("a room may include itself and every room below it") {
  CHECK(may_include("physics/bench/bench.cpp", "#include \"physics/units.h\""));
  CHECK(may_include("game/desk/mark.cpp", "#include \"game/demonstrator/hands.h\""));
  CHECK(may_include("game/desk/mark.cpp", "#include \"game/records/report.h\""));
  CHECK(may_include("game/scenes/bench.cpp", "#include \"physics/units.h\""));
  CHECK(may_include("game/marking/marks.cpp", "#include \"game/session/replay.h\""));
}

TEST_CASE("an include that points upwards is refused") {
  CHECK_FALSE(may_include("physics/units.h", "#include \"game/level/level.h\""));
  CHECK_FALSE(may_include("game/level/level.h", "#include \"game/session/session.h\""));
  CHECK_FALSE(may_include("game/session/session.h", "#include \"game/marking/marks.h\""));
  CHECK_FALSE(may_include("game/marking/marks.h", "#include \"game/records/attempt_file.h\""));
  CHECK_FALSE(may_include("game/marking/marks.h", "#include \"game/demonstrator/hands.h\""));
  CHECK_FALSE(may_include("game/records/attempt_file.h", "#include \"game/desk/mark.h\""));
  CHECK_FALSE(may_include("game/demonstrator/hands.h", "  #  include \"game/scenes/bench.h\""));
}

TEST_CASE("neighbours on one floor do not include each other") {
  CHECK_FALSE(may_include("game/records/report.cpp", "#include \"game/demonstrator/hands.h\""));
  CHECK_FALSE(may_include("game/demonstrator/hands.cpp", "#include \"game/records/report.h\""));
  CHECK_FALSE(may_include("game/desk/mark.cpp", "#include \"game/scenes/bench.h\""));
  CHECK_FALSE(may_include("game/scenes/bench.cpp", "#include \"game/desk/mark.h\""));
}

TEST_CASE("an include that is no path from the top, or a file in no room, is refused") {
  CHECK_FALSE(may_include("physics/bench/bench.cpp", "#include \"bench.h\""));
  CHECK_FALSE(may_include("physics/bench/bench.cpp", "#include \"tests/support/near.h\""));
  CHECK_FALSE(may_include("game/attic/bench.cpp", "#include \"physics/units.h\""));
  CHECK_FALSE(may_include("game/bench.cpp", "#include \"physics/units.h\""));
}

TEST_CASE("only the scenes know a screen") {
  CHECK(may_include("game/scenes/bench.cpp", "#include <SFML/Graphics.hpp>"));
  CHECK_FALSE(may_include("game/desk/mark.cpp", "#include <SFML/Graphics.hpp>"));
  CHECK_FALSE(may_include("game/session/view.h", "#include <SFML/Graphics/Color.hpp>"));
  CHECK_FALSE(may_include("game/desk/mark.cpp", "#include <X11/Xlib.h>"));
}

TEST_CASE("Box2D and JSON stay in their rooms") {
  CHECK(may_include("physics/bench/rigid_world.cpp", "#include <box2d/box2d.h>"));
  CHECK_FALSE(may_include("physics/bench/bench.cpp", "#include <box2d/box2d.h>"));
  CHECK_FALSE(may_include("game/session/session.cpp", "#include <box2d/box2d.h>"));
  CHECK(may_include("game/level/read.cpp", "#include <nlohmann/json.hpp>"));
  CHECK(may_include("game/records/read.cpp", "#include <nlohmann/json.hpp>"));
  CHECK_FALSE(may_include("game/desk/mark.cpp", "#include <nlohmann/json.hpp>"));
  CHECK_FALSE(may_include("physics/units.h", "#include <nlohmann/json.hpp>"));
}

TEST_CASE("physics includes the standard library and nothing that a replay could not repeat") {
  CHECK(may_include("physics/units.h", "#include <vector>"));
  CHECK_FALSE(may_include("physics/units.h", "#include <math.h>"));
  CHECK_FALSE(may_include("physics/units.h", "#include <sys/time.h>"));
  CHECK_FALSE(may_include("physics/units.h", "#include <tl/expected.hpp>"));
  for (const char* header : {"chrono", "ctime", "random", "fstream", "unordered_map", "unordered_set"}) {
    CAPTURE(header);
    const std::string line = std::string("#include <") + header + ">";
    CHECK_FALSE(may_include("physics/random.cpp", line));
    CHECK_FALSE(may_include("game/session/session.cpp", line));
    CHECK(may_include("game/records/report.cpp", line));
  }
}

}  // namespace halfdrop::house
