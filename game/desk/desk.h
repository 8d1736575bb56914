#pragma once
// The teacher's side, without a window: perform, mark, curve, check, mistakes.

#include <iosfwd>

namespace halfdrop::desk {

/// What a command ends with; the contract's exit statuses.
enum Status : int { kDone = 0, kFailed = 1, kWrongArguments = 2, kUnreadable = 3 };

/// Runs one command line. Results go to `out`; faults to `err`, one a line, "file: place: message".
int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

}  // namespace halfdrop::desk
