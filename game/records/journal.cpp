#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <system_error>

#include <nlohmann/json.hpp>

#include "game/level/fault_list.h"
#include "game/level/strict_json.h"
#include "game/records/attempt_file.h"

namespace halfdrop {
namespace {

constexpr mode_t kMode = 0644;

std::string reason() { return std::strerror(errno); }

Fault cannot(const std::string& path, const std::string& what) {
  return {FaultKind::cannot_open, path, "", what};
}

/// Writes from the front of `pending` and takes off what was written. Returns false (errno set) when stuck.
bool write_out(int file, std::string& pending) {
  while (!pending.empty()) {
    const ssize_t written = ::write(file, pending.data(), pending.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    pending.erase(0, static_cast<std::size_t>(written));
  }
  return true;
}

tl::expected<void, Fault> make_folder_of(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  std::error_code error;
  if (!folder.empty()) std::filesystem::create_directories(folder, error);
  if (error) return tl::unexpected(cannot(folder.string(), "cannot be made: " + error.message()));
  return {};
}

/// What of an attempt file is whole: its length, whether a line end is missing there, and how many lines it
/// has.
struct Whole {
  std::size_t bytes = 0;
  bool lacks_line_end = false;
  std::size_t lines = 0;
};

Whole whole_part(const std::string& text) {
  Whole whole;
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = text.find('\n', start);
    const bool last = end == std::string::npos || end + 1 == text.size();
    FaultList unused("");
    const std::size_t length = (end == std::string::npos ? text.size() : end) - start;
    if (last && !parse_json(std::string_view(text).substr(start, length), {}, unused)) break;
    ++whole.lines;
    whole.lacks_line_end = end == std::string::npos;
    start += length + (whole.lacks_line_end ? 0 : 1);
  }
  whole.bytes = start;
  return whole;
}

}  // namespace

tl::expected<Journal, Fault> Journal::begin(const std::string& path, const Attempt& attempt) {
  if (const auto why = check_alias(attempt.alias)) return tl::unexpected(cannot(path, *why));
  if (auto made = make_folder_of(path); !made) return tl::unexpected(made.error());
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, kMode);
  if (file < 0) return tl::unexpected(cannot(path, "cannot be made: " + reason()));
  Journal journal(path, file);
  journal.pending_ = attempt_text(attempt);
  if (const auto why = journal.flush()) return tl::unexpected(cannot(path, *why));
  return journal;
}

tl::expected<Journal, Fault> Journal::go_on(const std::string& path, const Attempt& attempt) {
  const tl::expected<std::string, Fault> text = read_file(path, kMostAttemptBytes);
  if (!text) return tl::unexpected(text.error());
  const Whole whole = whole_part(*text);
  if (whole.lines != attempt.changes.size() + 1)
    return tl::unexpected(cannot(path, "has changed since it was read: it cannot be gone on with"));
  if (has_ended(attempt)) return tl::unexpected(cannot(path, "has ended: it cannot be gone on with"));
  const int file = ::open(path.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  if (file < 0) return tl::unexpected(cannot(path, "cannot be opened for writing: " + reason()));
  Journal journal(path, file);
  if (::ftruncate(file, static_cast<off_t>(whole.bytes)) != 0)
    return tl::unexpected(cannot(path, "its torn last line cannot be cut off: " + reason()));
  if (whole.lacks_line_end) journal.pending_ = "\n";
  if (const auto why = journal.flush()) return tl::unexpected(cannot(path, *why));
  return journal;
}

std::optional<std::string> Journal::flush() {
  if (write_out(file_, pending_)) return std::nullopt;
  return "cannot be written: " + reason();
}

tl::expected<void, Fault> Journal::add(const Change& change) {
  pending_ += change_line(change) + "\n";
  const std::optional<std::string> why = flush();
  const bool told_before = std::exchange(failing_, why.has_value());
  if (why && !told_before) return tl::unexpected(cannot(path_, *why));
  return {};
}

Journal::Journal(Journal&& other) noexcept
    : path_(std::move(other.path_)),
      file_(std::exchange(other.file_, -1)),
      pending_(std::move(other.pending_)),
      failing_(other.failing_) {}

Journal& Journal::operator=(Journal&& other) noexcept {
  std::swap(path_, other.path_);
  std::swap(file_, other.file_);
  std::swap(pending_, other.pending_);
  std::swap(failing_, other.failing_);
  return *this;
}

Journal::~Journal() {
  if (file_ < 0) return;
  // A last try; that writing fails was reported when it began to.
  static_cast<void>(flush());
  ::close(file_);
}

tl::expected<void, Fault> write_attempt(const Attempt& attempt, const std::string& path) {
  if (const auto why = check_alias(attempt.alias)) return tl::unexpected(cannot(path, *why));
  if (auto made = make_folder_of(path); !made) return made;
  const std::string temporary = path + ".part" + std::to_string(::getpid());
  const int file = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, kMode);
  if (file < 0) return tl::unexpected(cannot(path, "cannot be made: " + reason()));
  std::string text = attempt_text(attempt);
  bool good = write_out(file, text) && ::fsync(file) == 0;
  std::string why = good ? "" : reason();
  if (::close(file) != 0 && good) {
    good = false;
    why = reason();
  }
  if (good && std::rename(temporary.c_str(), path.c_str()) != 0) {
    good = false;
    why = reason();
  }
  if (good) return {};
  ::unlink(temporary.c_str());
  return tl::unexpected(cannot(path, "cannot be written: " + why));
}

std::string attempts_folder() {
  const auto variable = [](const char* name) {
    const char* const value = std::getenv(name);
    return std::filesystem::path(value == nullptr ? "" : value);
  };
  const std::filesystem::path in_data = std::filesystem::path("halfdrop") / "attempts";
  // The XDG base directory specification has relative paths ignored.
  if (const auto data = variable("XDG_DATA_HOME"); data.is_absolute()) return (data / in_data).string();
  return (variable("HOME") / ".local" / "share" / in_data).string();
}

}  // namespace halfdrop
