#include <doctest/doctest.h>
#include <sys/resource.h>

#include <csignal>
#include <cstdlib>
#include <filesystem>

#include "game/records/attempt_file.h"
#include "tests/support/good_level.h"

using namespace halfdrop;
using namespace halfdrop::test;

namespace {

Attempt empty_attempt() {
  Attempt attempt;
  attempt.level = good_level();
  attempt.seed = 11;
  attempt.alias = "Ines";
  return attempt;
}

/// No file may grow beyond this: stands in for a full disk.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(std::size_t bytes) : signal_before_(std::signal(SIGXFSZ, SIG_IGN)) {
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &before_) == 0);
    const rlimit limit{bytes, before_.rlim_max};
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &limit) == 0);
  }
  ~FileSizeLimit() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, signal_before_);
  }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;

 private:
  rlimit before_{};
  void (*signal_before_)(int);
};

const Change kTile{5, Deed::lay_tile};
const Change kCoat{6, Deed::put_on_coat};
const Change kEnd{7, Ending{"left", "0123456789abcdef"}};

}  // namespace

TEST_SUITE("journal") {
  TEST_CASE("every line is in the file as soon as it is added") {
    const TemporaryFolder folder;
    const std::string path = folder.file("deep/down/a.jsonl");
    Attempt attempt = empty_attempt();
    auto journal = Journal::begin(path, attempt);
    REQUIRE(journal.has_value());
    CHECK(journal->path() == path);
    CHECK(text_of(path) == attempt_text(attempt));
    for (const Change& change : {kTile, kCoat, kEnd}) {
      REQUIRE(journal->add(change).has_value());
      attempt.changes.push_back(change);
      CHECK(text_of(path) == attempt_text(attempt));
    }
  }
  TEST_CASE("a journal never writes over a file that is there") {
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl", "dear diary");
    CHECK_FALSE(Journal::begin(path, empty_attempt()).has_value());
    CHECK(text_of(path) == "dear diary");
  }
  TEST_CASE("going on cuts a torn last line off and adds the rest") {
    const TemporaryFolder folder;
    Attempt attempt = empty_attempt();
    attempt.changes.push_back(kTile);
    for (const char* torn : {"", "{\"tick\":6,\"do\":\"put on c", "\n", "{\"tick\":6,\n"}) {
      CAPTURE(torn);
      const std::string path = folder.file("a.jsonl", attempt_text(attempt) + torn);
      const auto read = read_attempt(path);
      REQUIRE(read.has_value());
      auto journal = Journal::go_on(path, read->attempt);
      REQUIRE(journal.has_value());
      REQUIRE(journal->add(kCoat).has_value());
      CHECK(text_of(path) == attempt_text(attempt) + change_line(kCoat) + "\n");
    }
  }
  TEST_CASE("going on after a whole line without its line end loses nothing") {
    const TemporaryFolder folder;
    Attempt attempt = empty_attempt();
    attempt.changes.push_back(kTile);
    std::string text = attempt_text(attempt);
    text.pop_back();
    const std::string path = folder.file("a.jsonl", text);
    auto journal = Journal::go_on(path, read_attempt(path).value().attempt);
    REQUIRE(journal.has_value());
    REQUIRE(journal->add(kCoat).has_value());
    CHECK(text_of(path) == attempt_text(attempt) + change_line(kCoat) + "\n");
  }
  TEST_CASE("what has ended, or has changed meanwhile, cannot be gone on with") {
    const TemporaryFolder folder;
    Attempt attempt = empty_attempt();
    attempt.changes.push_back(kEnd);
    const std::string path = folder.file("a.jsonl", attempt_text(attempt));
    CHECK_FALSE(Journal::go_on(path, attempt).has_value());
    CHECK_FALSE(Journal::go_on(path, empty_attempt()).has_value());
    CHECK_FALSE(Journal::go_on(folder.file("not-there.jsonl"), attempt).has_value());
    CHECK(text_of(path) == attempt_text(attempt));
  }
  TEST_CASE("a full disk is told once, play goes on, and no line is lost when there is room again") {
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl");
    const Attempt attempt = empty_attempt();
    auto journal = Journal::begin(path, attempt);
    REQUIRE(journal.has_value());
    {
      const FileSizeLimit full(attempt_text(attempt).size() + 10);
      const auto told = journal->add(kTile);
      REQUIRE_FALSE(told.has_value());
      CHECK(told.error().file == path);
      CHECK(journal->add(kCoat).has_value());
      CHECK(text_of(path).size() == attempt_text(attempt).size() + 10);
    }
    CHECK(journal->add(kEnd).has_value());
    Attempt whole = attempt;
    whole.changes = {kTile, kCoat, kEnd};
    CHECK(text_of(path) == attempt_text(whole));
  }
  TEST_CASE("an attempt that cannot be written whole leaves what was there") {
    const TemporaryFolder folder;
    const std::string path = folder.file("a.jsonl", "before");
    {
      const FileSizeLimit full(100);
      CHECK_FALSE(write_attempt(empty_attempt(), path).has_value());
    }
    CHECK(text_of(path) == "before");
    CHECK_FALSE(write_attempt(empty_attempt(), "/dev/null/a.jsonl").has_value());
  }
  TEST_CASE("an attempt is written whole or not at all") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b/a.jsonl");
    REQUIRE(write_attempt(empty_attempt(), path).has_value());
    Attempt longer = empty_attempt();
    longer.changes.push_back(kTile);
    REQUIRE(write_attempt(longer, path).has_value());
    CHECK(text_of(path) == attempt_text(longer));
    int files = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder.file("b"))) ++files;
    CHECK(files == 1);
    CHECK(write_attempt(longer, folder.file("b")).error().kind == FaultKind::cannot_open);
  }
  TEST_CASE("an alias that could not be read back is refused") {
    const TemporaryFolder folder;
    Attempt attempt = empty_attempt();
    attempt.alias = std::string(101, 'x');
    CHECK_FALSE(write_attempt(attempt, folder.file("a.jsonl")).has_value());
    CHECK_FALSE(Journal::begin(folder.file("a.jsonl"), attempt).has_value());
    CHECK_FALSE(std::filesystem::exists(folder.file("a.jsonl")));
  }
  TEST_CASE("attempts are kept where the XDG base directory specification says") {
    ::setenv("HOME", "/home/ines", 1);
    ::unsetenv("XDG_DATA_HOME");
    CHECK(attempts_folder() == "/home/ines/.local/share/halfdrop/attempts");
    ::setenv("XDG_DATA_HOME", "relative", 1);
    CHECK(attempts_folder() == "/home/ines/.local/share/halfdrop/attempts");
    ::setenv("XDG_DATA_HOME", "/data", 1);
    CHECK(attempts_folder() == "/data/halfdrop/attempts");
  }
}
