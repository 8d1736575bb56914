#pragma once
// Attempts as JSON Lines (design contract): first line, one line a change in tick order, a last line.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "game/session/attempt.h"

namespace halfdrop {

struct AttemptFile {
  Attempt attempt;
  std::vector<std::string> warnings;  ///< a torn last line that was dropped
};

inline constexpr std::size_t kMostAttemptBytes = std::size_t{64} << 20;

/// Why an alias cannot stand in an attempt file: more than 100 characters.
[[nodiscard]] std::optional<std::string> check_alias(const std::string& alias);

/// Reads and checks every line; every fault at once, each with its line number. Unknown or doubled keys,
/// wrong types, values out of range, unknown deeds and cells, ticks out of order are faults. A last line
/// that is empty or only begins an object is torn: dropped with a warning. (A whole last line without a line
/// end is kept; any other last line is a fault.)
[[nodiscard]] Result<AttemptFile> read_attempt(const std::string& path);
[[nodiscard]] Result<AttemptFile> read_attempt_text(const std::string& text,
                                                    const std::string& name_for_faults);

/// The first line, and a line for each change (no line end).
[[nodiscard]] std::string first_line(const Attempt& attempt);
[[nodiscard]] std::string change_line(const Change& change);
[[nodiscard]] std::string attempt_text(const Attempt& attempt);
/// Writes to a temporary beside it, then renames; what stood under the name before is replaced.
[[nodiscard]] tl::expected<void, Fault> write_attempt(const Attempt& attempt, const std::string& path);

/// An attempt written as it is played, a line a change, flushed.
class Journal {
 public:
  /// Makes the folder if need be. Never writes over a file that is there.
  [[nodiscard]] static tl::expected<Journal, Fault> begin(const std::string& path, const Attempt& attempt);
  /// Goes on with an attempt that was read from `path` (a torn last line is cut off).
  [[nodiscard]] static tl::expected<Journal, Fault> go_on(const std::string& path, const Attempt& attempt);
  /// A fault once when writing failed (disk full ...); play can go on.
  [[nodiscard]] tl::expected<void, Fault> add(const Change& change);
  [[nodiscard]] const std::string& path() const { return path_; }

  Journal(Journal&& other) noexcept;
  Journal& operator=(Journal&& other) noexcept;
  ~Journal();

 private:
  Journal(std::string path, int file) : path_(std::move(path)), file_(file) {}
  /// Writes what is pending; errno's text when not all of it could be written.
  std::optional<std::string> flush();

  std::string path_;
  int file_ = -1;
  std::string pending_;   ///< not yet written: kept, so that a disk that was full for a while leaves no hole
  bool failing_ = false;  ///< the fault was reported already
};

/// Folder of the attempts of this user: $XDG_DATA_HOME/halfdrop/attempts or ~/.local/share/halfdrop/attempts.
[[nodiscard]] std::string attempts_folder();

}  // namespace halfdrop
