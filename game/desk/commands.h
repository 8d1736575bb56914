#pragma once
// The commands and their options as the command line gave them; every command checks its own values.

#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "game/desk/desk.h"
#include "game/level/fault.h"

namespace halfdrop::desk {

struct Streams {
  std::ostream& out;
  std::ostream& err;
};

struct PerformOptions {
  std::string level, out, seed = "1", alias = "demonstrator";
  std::vector<std::string> mistakes;
};
int perform_level(const PerformOptions& options, Streams streams);

struct MarkOptions {
  std::vector<std::string> attempts;
  bool json = false, csv = false;
};
int mark_attempts(const MarkOptions& options, Streams streams);

struct CurveOptions {
  std::string level;                        ///< empty when the rest describes the titration
  std::vector<std::string> flask, burette;  ///< name and mol/dm3; empty when not given
  std::string aliquot, indicator, drops, pka, pkw, temperature, at, to, step;
  bool ideal = false, json = false;
};
int print_curve(const CurveOptions& options, Streams streams);

int check_levels(const std::vector<std::string>& levels, Streams streams);

int print_mistakes(bool json, Streams streams);

/// "halfdrop-desk: option: message", and kWrongArguments.
int wrong_argument(std::string_view option, const std::string& message, Streams streams);
/// Each fault on a line of its own; the status they make.
int report(const std::vector<Fault>& faults, Streams streams);
/// Status of a batch from the statuses of its files: one file's own, kFailed when one of several failed.
int batch_status(const std::vector<int>& statuses);

[[nodiscard]] std::optional<std::uint64_t> seed_from(std::string_view text);

}  // namespace halfdrop::desk
