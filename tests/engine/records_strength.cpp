// A store under ill luck: killed, full, locked, spoilt, read-only. Nothing may be lost or stand twice, and
// what is wrong is said in words.
#include "full_disk.hpp"
#include "records_support.hpp"

#include "engine/records/connection.hpp"
#include "engine/records/views.hpp"

#include <atomic>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <random>
#include <sys/wait.h>
#include <thread>

using namespace matula;
using namespace matula::records;

namespace {

namespace fs = std::filesystem;

/// A folder of tiny sittings: ten students, four each; and the folder with their scenario.
struct Lot {
  test::Scratch scratch{"matula_lot"};
  fs::path folder = scratch / "in";
  fs::path scenarios = scratch / "scenarios";

  explicit Lot(int students = 10) {
    test::spill(scenarios / "tiny.toml", test::tiny_scenario);
    for (int student = 0; student < students; ++student) {
      for (int n = 0; n < 4; ++n) {
        test::spill(folder / ("student-" + std::to_string(10 + student)) /
                        ("tiny-" + std::to_string(n) + ".jsonl"),
                    test::tiny_log(n % 2 == 0 ? "1+" : "3+", n < 2 ? "yes" : "no", 500 + 10 * student + n));
      }
    }
  }
  void import_into(const std::string& address, int threads = 2) const {
    Store store(address);
    import_folder(store, test::marker(), folder, {scenarios}, {"lot", "", threads, 1764244800}, {});
  }
};

/// Runs `work` in a process of its own; its answer, and what it said, come back.
template <class Work> pid_t in_child(Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    int code = 1;
    try {
      work();
      code = 0;
    } catch (...) { // NOLINT(bugprone-empty-catch): the code tells.
    }
    ::_exit(code);
  }
  return child;
}

int wait_for(pid_t child) {
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// The words of the trouble that `work` meets in a process of its own; "" when it meets none.
template <class Work> std::string trouble_in_child(const fs::path& note, Work work) {
  fs::remove(note);
  const int handle = ::open(note.c_str(), O_CREAT | O_WRONLY, 0666);
  const pid_t child = ::fork();
  if (child == 0) {
    std::string words;
    try {
      work();
    } catch (const Trouble& trouble) {
      words = trouble.what();
    } catch (const std::exception& other) {
      words = std::string("NOT IN WORDS: ") + other.what();
    }
    const bool written = ::write(handle, words.data(), words.size()) == static_cast<ssize_t>(words.size());
    ::_exit(written ? 0 : 1);
  }
  ::close(handle);
  wait_for(child);
  return test::slurp(note);
}

std::string dump_of(const std::string& address) {
  Store store(address);
  return test::dump(store);
}

/// Every sitting has a score, every score its marks.
void check_whole(Store& store) {
  auto& db = store.connection();
  CHECK(db.number("SELECT count(*) FROM sitting WHERE id NOT IN (SELECT sitting FROM score)") == 0);
  CHECK(db.number("SELECT count(*) FROM score WHERE id NOT IN (SELECT score FROM mark)") == 0);
  CHECK(db.number("SELECT count(*) FROM score WHERE id NOT IN (SELECT score FROM reading)") == 0);
  CHECK_FALSE(db.number("PRAGMA foreign_key_check").has_value());
}

} // namespace

TEST_CASE("An import killed two hundred times loses nothing and doubles nothing") {
  const Lot lot;
  const auto whole = (lot.scratch / "whole.db").string();
  (void)test::marked(
      test::tiny_incoming("warm-up", test::tiny_log("1+", "yes"))); // Ready before the first fork.
  const auto begin = std::chrono::steady_clock::now();
  REQUIRE(wait_for(in_child([&] { lot.import_into(whole); })) == 0);
  const auto took =
      std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin);
  const std::string undisturbed = dump_of(whole);

  std::mt19937_64 dice(200);
  int kills = 0;
  int stores = 0;
  int resumed = 0; // Kills after which some, and not all, was there.
  while (kills < 200) {
    const auto file = (lot.scratch / ("killed-" + std::to_string(stores++) + ".db")).string();
    while (kills < 200) {
      const pid_t child = in_child([&] { lot.import_into(file); });
      std::this_thread::sleep_for(
          std::chrono::microseconds(dice() % static_cast<std::uint64_t>(took.count() / 3 + 1)));
      ::kill(child, SIGKILL);
      if (wait_for(child) == 0) {
        break; // It was through already: this store is full, on with the next.
      }
      ++kills;
      if (fs::exists(file) && fs::file_size(file) > 0) {
        Store store(file);
        check_whole(store);
        const auto there = store.sittings().size();
        resumed += there > 0 && there < 40 ? 1 : 0;
        if (there == 40) {
          break;
        }
      }
    }
    lot.import_into(file);
    CHECK(dump_of(file) == undisturbed);
  }
  WARN(kills << " kills over " << stores << " stores; after " << resumed << " of them a part was there");
  CHECK(kills == 200);
  CHECK(resumed > 20);
}

TEST_CASE("A full disk is said in words, what was stored is kept, and the import goes on from there") {
  const Lot lot;
  const auto whole = (lot.scratch / "whole.db").string();
  const auto file = (lot.scratch / "full.db").string();
  lot.import_into(whole);
  const std::string words = trouble_in_child(lot.scratch / "note", [&] {
    const test::FullDisk full(300000);
    lot.import_into(file);
  });
  INFO(words);
  CHECK(words.find("full") != std::string::npos);
  CHECK(words.find("kept") != std::string::npos);
  {
    Store store(file);
    check_whole(store);
    CHECK(store.sittings().size() < 40);
  }
  lot.import_into(file);
  CHECK(dump_of(file) == dump_of(whole));
}

TEST_CASE("A folder or store that may not be written is said in words") {
  const test::Scratch scratch("matula_read_only");
  const auto folder = scratch / "closed";
  fs::create_directories(folder);
  {
    Store((folder / "class.db").string())
        .add(test::marked(test::tiny_incoming("ada", test::tiny_log("1+", "yes"))), 1);
  }
  fs::permissions(scratch.path(), fs::perms::all);
  fs::permissions(folder, fs::perms::owner_read | fs::perms::owner_exec | fs::perms::group_read |
                              fs::perms::group_exec | fs::perms::others_read | fs::perms::others_exec);
  const auto as_nobody = [] {
    constexpr unsigned nobody = 65534;
    if (::getuid() == 0 && (::setgid(nobody) != 0 || ::setuid(nobody) != 0)) {
      throw Trouble("cannot become nobody");
    }
  };
  const std::string fresh = trouble_in_child(scratch / "note", [&] {
    as_nobody();
    Store((folder / "new.db").string());
  });
  INFO(fresh);
  CHECK(fresh.find("new.db") != std::string::npos);
  CHECK(fresh.find("written") != std::string::npos);
  const std::string there = trouble_in_child(scratch / "note", [&] {
    as_nobody();
    Store store((folder / "class.db").string());
    store.add(test::marked(test::tiny_incoming("bo", test::tiny_log("1+", "yes"))), 1);
  });
  INFO(there);
  CHECK(there.find("class.db") != std::string::npos);
  CHECK(there.find("written") != std::string::npos);
  fs::permissions(folder, fs::perms::all);
  CHECK(Store((folder / "class.db").string()).sittings().size() == 1);
}

TEST_CASE("A locked store is waited for, and then said in words") {
  const test::Scratch scratch("matula_locked");
  const auto file = (scratch / "class.db").string();
  Store store(file);
  const auto sat = test::marked(test::tiny_incoming("ada", test::tiny_log("1+", "yes")));
  Connection other(file);
  {
    const Transaction held(other);
    CHECK(store.sittings().empty()); // Reading goes on meanwhile.
    CHECK_THROWS_WITH(store.add(sat, 1), Catch::Contains("in use by another program"));
  }
  CHECK(store.add(sat, 1).number == 1);
  auto held = std::make_unique<Transaction>(other);
  std::thread lets_go([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
    held.reset();
  });
  CHECK(store.add(test::marked(test::tiny_incoming("bo", test::tiny_log("1+", "yes"))), 1).number == 2);
  lets_go.join();
}

TEST_CASE("A damaged store, and what is none, are named and left as they are") {
  const Lot lot;
  const auto file = (lot.scratch / "class.db").string();
  lot.import_into(file);
  std::string bytes = test::slurp(file);
  const std::string good = bytes;
  std::mt19937_64 dice(3);
  for (std::size_t at = 4096; at + 4096 < bytes.size(); at += 8192) {
    for (std::size_t i = 0; i < 600; ++i) {
      bytes[at + i] = static_cast<char>(dice());
    }
  }
  const auto refused = [&](const std::string& content, const std::string& words) {
    test::spill(file, content);
    CHECK_THROWS_WITH(Store(file), Catch::Contains(words));
    CHECK(test::slurp(file) == content);
  };
  refused(bytes, "damaged");
  refused(good.substr(0, good.size() / 2), "damaged");
  refused("This is a letter to my aunt.\n", "no class store");
  refused("short", "too short");
  test::spill(file, good);
  CHECK(Store(file).sittings().size() == 40);
  const auto foreign = (lot.scratch / "foreign.db").string();
  REQUIRE(std::system(("python3 -c \"import sqlite3; c = sqlite3.connect('" + foreign +
                       "'); c.execute('create table t (x)'); c.commit()\"")
                          .c_str()) == 0);
  const std::string before = test::slurp(foreign);
  CHECK_THROWS_WITH(Store(foreign), Catch::Contains("another program's"));
  CHECK(test::slurp(foreign) == before);
}

TEST_CASE("Rows that do not belong together are found by looking through everything") {
  const Lot lot(2);
  const auto file = (lot.scratch / "class.db").string();
  lot.import_into(file);
  Store store(file);
  CHECK(store.find_damage().empty());
  {
    Connection careless(file);
    careless.run("PRAGMA foreign_keys = OFF");
    careless.run("DELETE FROM score WHERE sitting = 1");
    careless.run("DELETE FROM student WHERE id = (SELECT student FROM sitting WHERE id = 8)");
    careless.run("UPDATE score SET current = 0 WHERE sitting = 2");
  }
  Store opened(file); // Its pages are all in order.
  const auto wrong = opened.find_damage();
  std::string words;
  for (const auto& one : wrong) {
    words += one + '\n';
  }
  INFO(words);
  CHECK(words.find("4 sitting(s) without their student") != std::string::npos);
  CHECK(words.find("1 sitting(s) without a score") != std::string::npos);
  CHECK(words.find("2 sitting(s) none of whose scores counts") != std::string::npos);
  CHECK(words.find("mark(s) of no score") != std::string::npos);
  CHECK(words.find("reading(s) of no score") != std::string::npos);
}

TEST_CASE("Sittings are imported while another looks at the class") {
  const Lot lot(8); // 32 sittings.
  const auto file = (lot.scratch / "class.db").string();
  { const Store made(file); }
  std::atomic<bool> done{false};
  int looks = 0;
  std::size_t most = 0;
  bool fell = false;
  bool torn = false;
  std::thread looking([&] {
    Store store(file);
    while (!done || looks == 0) {
      const auto sittings = store.sittings().size();
      int readings = 0;
      for (const auto& pair : pair_counts(store, {})) {
        readings += pair.times;
      }
      torn = torn || readings < static_cast<int>(sittings); // One reading a sitting, stored with it.
      fell = fell || sittings < most;
      most = std::max(most, sittings);
      ++looks;
    }
  });
  CHECK_NOTHROW(lot.import_into(file));
  done = true;
  looking.join();
  CHECK(looks > 3);
  CHECK_FALSE(fell);
  CHECK_FALSE(torn);
  CHECK(Store(file).sittings().size() == 32);
}

TEST_CASE("A student is forgotten while another looks: it is said that the file must still be cleaned") {
  const Lot lot(2);
  const auto file = (lot.scratch / "class.db").string();
  lot.import_into(file);
  Store store(file);
  {
    Connection looking(file);
    looking.run("BEGIN");
    CHECK(looking.number("SELECT count(*) FROM sitting") == 8);
    CHECK_THROWS_WITH(store.forget("student-10"),
                      Catch::Contains("was removed") && Catch::Contains("class expire"));
    CHECK(store.sittings().size() == 4);
    looking.run("COMMIT");
  }
  CHECK_NOTHROW(store.forget_until("2027-01-01"));
  for (const auto& entry : fs::directory_iterator(lot.scratch.path())) {
    if (entry.is_regular_file()) {
      CHECK(test::slurp(entry.path()).find("student-10") == std::string::npos);
    }
  }
}

TEST_CASE("A log that lies in no student's folder is refused, and other files are passed over") {
  const Lot lot(1);
  test::spill(lot.folder / "loose.jsonl", test::tiny_log("1+", "yes"));
  test::spill(lot.folder / "student-10" / "record.jsonl", "{\"matula_record\":1}\n");
  test::spill(lot.folder / "student-10" / "notes.txt", "hello");
  test::spill(
      lot.folder / "student-11" / "other.jsonl",
      R"({"matula_sitting":1,"scenario":"../../etc/passwd","scenario_file":"/etc/passwd","scenario_hash":"0","seed":1,"program":"0"})"
      "\n");
  Store store((lot.scratch / "class.db").string());
  const auto sum = import_folder(store, test::marker(), lot.folder, {lot.scenarios}, {"", "", 2, 1}, {});
  CHECK(sum.fresh == 4);
  REQUIRE(sum.refused.size() == 2);
  CHECK(sum.refused[0].why.find("no student's folder") != std::string::npos);
  CHECK(sum.refused[1].why.find("you have no scenario 'passwd'") != std::string::npos);
}

TEST_CASE("another way into a store leaves the first one's lock where it was") {
  const test::Scratch scratch("matula_locks");
  const std::string file = (scratch / "class.db").string();
  Store first(file);
  // The bytes a reader of a database file keeps locked: https://www.sqlite.org/src (os_unix.c, SHARED_FIRST).
  constexpr off_t first_shared = 0x40000000 + 2;
  constexpr off_t shared = 510;
  const auto held = [&] {
    return in_child([&] {
      struct flock asked {};
      asked.l_type = F_WRLCK;
      asked.l_whence = SEEK_SET;
      asked.l_start = first_shared;
      asked.l_len = shared;
      const int at = ::open(file.c_str(), O_RDWR);
      if (at < 0 || ::fcntl(at, F_GETLK, &asked) != 0 || asked.l_type == F_UNLCK) {
        throw Trouble("nobody holds it");
      }
    });
  };
  const auto ended_well = [](pid_t child) {
    int status = 1;
    ::waitpid(child, &status, 0);
    return status == 0;
  };
  REQUIRE(first.sittings().empty());
  CHECK(ended_well(held()));
  { const Store second(file); }
  CHECK(ended_well(held()));
  { const Store beside = first.beside(); }
  CHECK(ended_well(held()));
}
