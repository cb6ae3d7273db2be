// The same store on a real PostgreSQL server, which this test starts for itself in a folder of its own, on a
// socket. Passed over, and said so, only where the server's programs are not installed.
#include "records_cases.hpp"
#include "records_support.hpp"

#include "engine/records/connection.hpp"
#include "engine/records/views.hpp"

#include <cstdlib>
#include <iostream>
#include <thread>

using namespace matula;
using namespace matula::records;

namespace {

namespace fs = std::filesystem;

/// The newest of the server's programs; empty when there is none.
fs::path programs() {
  std::vector<fs::path> found;
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator("/usr/lib/postgresql", ignored)) {
    if (fs::exists(entry.path() / "bin" / "initdb") && fs::exists(entry.path() / "bin" / "pg_ctl")) {
      found.push_back(entry.path() / "bin");
    }
  }
  std::sort(found.begin(), found.end());
  return found.empty() ? fs::path() : found.back();
}

/// Runs as a person who is not root: the server refuses to be root's.
int as_somebody(const std::string& words) {
  const std::string line = ::getuid() == 0 ? "runuser -u postgres -- " + words : words;
  return std::system((line + " >/dev/null 2>&1 </dev/null").c_str());
}

class Server {
public:
  Server() : folder_("matula_server"), bin_(programs()) {
    if (bin_.empty()) {
      return;
    }
    fs::permissions(folder_.path(), fs::perms::all);
    const std::string data = (folder_ / "data").string();
    const bool made = as_somebody((bin_ / "initdb").string() + " -D " + data +
                                  " -U matula -A trust -E UTF8 --no-locale") == 0;
    const std::string options =
        "\"-c listen_addresses='' -c unix_socket_directories=" + folder_.path().string() + " -c fsync=off\"";
    runs_ = made && as_somebody((bin_ / "pg_ctl").string() + " -D " + data + " -w -t 60 -l " +
                                (folder_ / "log").string() + " -o " + options + " start") == 0;
  }
  ~Server() {
    if (runs_) {
      (void)as_somebody((bin_ / "pg_ctl").string() + " -D " + (folder_ / "data").string() +
                        " -m immediate -w stop");
    }
  }
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  [[nodiscard]] bool installed() const { return !bin_.empty(); }
  [[nodiscard]] bool runs() const { return runs_; }
  [[nodiscard]] std::string address(const std::string& database) const {
    return "postgresql:///" + database + "?host=" + folder_.path().string() + "&user=matula";
  }
  /// A database with nothing in it.
  [[nodiscard]] std::string fresh() {
    const std::string name = "class" + std::to_string(++made_);
    Connection(address("postgres")).run("CREATE DATABASE " + name);
    return address(name);
  }

private:
  test::Scratch folder_;
  fs::path bin_;
  bool runs_ = false;
  int made_ = 0;
};

Server& server() {
  static Server one;
  return one;
}

void on_the_server(void (*run)(const std::string&)) {
  if (!server().installed()) {
    WARN("PASSED OVER: there is no PostgreSQL server on this machine");
    return;
  }
  REQUIRE(server().runs());
  run(server().fresh());
}

} // namespace

TEST_CASE("On a server a sitting is kept with its marks, readings and the very log") {
  on_the_server(test::keeps_a_sitting);
}
TEST_CASE("On a server importing again changes nothing") {
  on_the_server(test::knows_what_it_has);
}
TEST_CASE("On a server a sitting that goes on counts in place of its first part") {
  on_the_server(test::puts_the_longer_in_place);
}
TEST_CASE("On a server the same log from two students is named") {
  on_the_server(test::names_the_same_log);
}
TEST_CASE("On a server marking anew keeps both scores and lists the difference") {
  on_the_server(test::keeps_both_scores);
}

TEST_CASE("On a server what is to be reviewed is found, by label and student, in words") {
  on_the_server(test::finds_what_is_to_be_reviewed);
}

TEST_CASE("On a server a student is forgotten with everything") {
  on_the_server(test::forgets_a_student);
}
TEST_CASE("On a server sittings go at the end of their time") {
  on_the_server(test::forgets_at_the_last_day);
}
TEST_CASE("On a server a store of the first schema is brought up to date") {
  on_the_server(test::goes_on_from_the_first_schema);
}
TEST_CASE("On a server a store of a newer program is refused in words") {
  on_the_server(test::refuses_a_newer_schema);
}

TEST_CASE("A server and a file hold the same, and two may import at once") {
  on_the_server([](const std::string& address) {
    std::vector<Incoming> sittings;
    for (int i = 0; i < 12; ++i) {
      sittings.push_back(test::tiny_incoming("student-" + std::to_string(i),
                                             test::tiny_log(i % 2 == 0 ? "1+" : "2+", "yes", 590 + i)));
    }
    const test::Scratch scratch("matula_server_twin");
    Store file((scratch / "class.db").string());
    import_all(file, test::marker(), sittings, {"", "", 1, 1}, {});
    { const Store first(address); } // The tables, before two begin at once.
    std::thread other([&] {
      Store mine(address);
      import_all(mine, test::marker(), sittings, {"", "", 1, 1}, {});
    });
    Store mine(address);
    import_all(mine, test::marker(), sittings, {"", "", 1, 1}, {});
    other.join();
    REQUIRE(mine.sittings().size() == 12);
    std::set<std::string> ours;
    std::set<std::string> theirs;
    for (const auto& row : mine.sittings()) {
      ours.insert(row.pseudonym + row.ledgers + mine.original(row.number).log_text);
    }
    for (const auto& row : file.sittings()) {
      theirs.insert(row.pseudonym + row.ledgers + file.original(row.number).log_text);
    }
    CHECK(ours == theirs);
    CHECK(pair_counts(mine, {}).size() == pair_counts(file, {}).size());
    CHECK(fault_counts(mine, {}).size() == fault_counts(file, {}).size());
    CHECK(student_sums(mine, {"tiny", "", ""}).size() == 12);
    CHECK(tubes_read(mine, {"tiny", "", "student-3"}, 100).size() == 1);
    CHECK(item_marks(mine, {}).size() == item_marks(file, {}).size());
    CHECK_THROWS_WITH(mine.back_up("copy"), Catch::Contains("pg_dump"));
  });
}

TEST_CASE("A server that is not there is named in words") {
  CHECK_THROWS_WITH(Store("postgresql:///class?host=/no/such/folder"), Catch::Contains("database server"));
}
