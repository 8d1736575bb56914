#include "game/desk/desk.h"

#include <algorithm>
#include <ostream>

#include <CLI/CLI.hpp>

#include "game/desk/commands.h"
#include "game/level/nearest.h"

namespace halfdrop::desk {

namespace {

/// An option that was given says something.
std::string not_empty(const std::string& text) { return text.empty() ? "nothing given" : ""; }

/// The command line: what CLI11 fills in.
struct CommandLine {
  CLI::App app{"Halfdrop's desk: performs, marks and checks, without a window.", "halfdrop-desk"};
  PerformOptions perform;
  MarkOptions mark;
  CurveOptions curve;
  std::vector<std::string> levels;
  bool mistakes_json = false;

  CommandLine() {
    app.require_subcommand(1);
    add_perform();
    add_mark();
    add_curve();
    add_check();
    add_mistakes();
  }

  void add_mistakes() {
    CLI::App* const list = app.add_subcommand("mistakes", "Lists the mistakes that can be performed.");
    list->add_flag("--json", mistakes_json, "One JSON object a line");
  }

  void add_perform() {
    CLI::App* const sub = app.add_subcommand("perform", "The demonstrator plays a level.");
    sub->add_option("LEVEL", perform.level, "Level file")->required();
    sub->add_option("--mistake", perform.mistakes, "A mistake to make; may be given again")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    sub->add_option("--seed", perform.seed, "Whole number that draws unknown and glass (default 1)");
    sub->add_option("--alias", perform.alias, "Name in the attempt");
    sub->add_option("--out", perform.out, "Attempt file to write")->required();
  }

  void add_mark() {
    CLI::App* const sub = app.add_subcommand("mark", "Replays, verifies and marks attempts.");
    sub->add_option("ATTEMPT", mark.attempts, "Attempt files")->required();
    CLI::Option* const json = sub->add_flag("--json", mark.json, "One JSON object an attempt");
    sub->add_flag("--csv", mark.csv, "A header and one row an attempt")->excludes(json);
  }

  void add_curve() {
    CLI::App* const sub = app.add_subcommand("curve", "Prints a titration curve, as CSV.");
    const auto add = [sub](const char* name, auto& into, const char* type, const char* help) {
      return sub->add_option(name, into, help)->type_name(type)->check(not_empty);
    };
    add("LEVEL", curve.level, "", "Level file; its unknown is taken in the middle of its range");
    add("--flask", curve.flask, "NAME MOL_DM3", "Substance in the flask and its strength")->expected(2);
    add("--aliquot", curve.aliquot, "CM3", "Volume in the flask");
    add("--burette", curve.burette, "NAME MOL_DM3", "Substance in the burette and its strength")->expected(2);
    add("--indicator", curve.indicator, "NAME", "Indicator in the flask");
    add("--drops", curve.drops, "N", "Drops of indicator (default 3)");
    add("--pka", curve.pka, "A,B,C", "Replace the flask substance's constants, ascending");
    add("--pkw", curve.pkw, "X", "Replaces the ion product of water");
    sub->add_flag("--ideal", curve.ideal, "All activity coefficients 1");
    sub->add_flag("--json", curve.json, "One JSON object: equivalences, visible change and warnings too");
    add("--temperature", curve.temperature, "C", "Degrees Celsius (default 25, whatever a LEVEL says)");
    add("--at", curve.at, "V1,V2,...", "Volumes from the burette, cm3");
    add("--to", curve.to, "V", "Last volume, cm3 (default 50)");
    add("--step", curve.step, "V", "Volumes from 0 in steps of this, cm3 (default 0.5)");
  }

  void add_check() {
    CLI::App* const sub = app.add_subcommand(
        "check", "Finds every error of level files, and of languages (assets/text/xx.json).");
    sub->add_option("LEVEL", levels, "Level files")->required();
  }

  /// What is wrong with the command's own name, if anything.
  [[nodiscard]] std::optional<std::string> wrong_command(std::string_view name) const {
    std::vector<std::string> names;
    for (const CLI::App* sub : app.get_subcommands({})) names.push_back(sub->get_name());
    const std::vector<std::string_view> known(names.begin(), names.end());
    if (name.starts_with('-') || std::find(known.begin(), known.end(), name) != known.end()) return {};
    return "unknown command \"" + std::string(name) + "\"" + did_you_mean(name, known);
  }

  [[nodiscard]] int go(Streams streams) const {
    if (app.got_subcommand("perform")) return perform_level(perform, streams);
    if (app.got_subcommand("mark")) return mark_attempts(mark, streams);
    if (app.got_subcommand("curve")) return print_curve(curve, streams);
    if (app.got_subcommand("check")) return check_levels(levels, streams);
    return print_mistakes(mistakes_json, streams);
  }
};

}  // namespace

int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
  CommandLine line;
  const Streams streams{out, err};
  if (argc > 1) {
    if (const auto wrong = line.wrong_command(argv[1])) return wrong_argument("command", *wrong, streams);
  }
  try {
    line.app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success))
      return line.app.exit(error, out, err);
    return wrong_argument("arguments", std::string(error.what()) + " (see --help)", streams);
  }
  const int status = line.go(streams);
  out.flush();
  if (out) return status;
  err << "halfdrop-desk: standard output: cannot be written\n";
  return kFailed;
}

}  // namespace halfdrop::desk
