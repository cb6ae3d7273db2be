#include "engine/strict/nearest.hpp"
#include "engine/strict/table.hpp"

#include <catch2/catch.hpp>

using namespace matula;

TEST_CASE("A right file has no problems") {
  strict::File file("a = 1.5\nname = \"x\"\n[part]\nlist = [1, 2]\n", "right.toml");
  const strict::Table root = file.root();
  CHECK(root.number("a", {0, 2, "mL"}) == 1.5);
  CHECK(root.text("name") == "x");
  CHECK(root.table("part").numbers("list", {0, 5, ""}, 2) == std::vector<double>{1, 2});
  CHECK(root.number_or("b", {0, 1, ""}, 0.25) == 0.25);
  CHECK(file.finish().empty());
}

TEST_CASE("Every problem is reported with its line, its words and the allowed range") {
  strict::File file("volume_ml = 500\nroom = \"warm\"\n\n[patient]\nnme = \"A\"\n", "wrong.toml");
  const strict::Table root = file.root();
  (void)root.number("volume_ml", {0, 100, "mL"});
  (void)root.number_or("room", {10, 40, "degrees C"}, 22);
  (void)root.table("patient").text("name");
  const scenario::Problems problems = file.finish();
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].line == 1);
  CHECK(problems[0].text == "volume_ml = 500");
  CHECK(problems[0].found == "volume_ml = 500");
  CHECK(problems[0].expected == "a number from 0 to 100 mL");
  CHECK(problems[1].line == 2);
  CHECK(problems[1].found == "room = \"warm\"");
  CHECK(problems[2].line == 4);
  CHECK(problems[2].found == "no 'name'");
  CHECK(problems[3].line == 5);
  CHECK(problems[3].found == "unknown key 'nme'");
  CHECK(problems[3].expected == "did you mean 'name'?");
}

TEST_CASE("Unknown tables and keys in lists of tables are refused") {
  strict::File file("[[row]]\nkey = \"a\"\nextra = 1\n[other]\nx = 1\n", "rows.toml");
  for (const strict::Table& row : file.root().tables("row")) {
    (void)row.text("key");
  }
  const scenario::Problems problems = file.finish();
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].line == 3);
  CHECK(problems[1].found == "unknown key 'other'");
}

TEST_CASE("Broken TOML is one problem, at its line") {
  strict::File file("a = 1\nb = = 2\n", "broken.toml");
  (void)file.root().number("c", {0, 1, ""});
  const scenario::Problems problems = file.finish();
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
}

TEST_CASE("A missing file is a problem") {
  strict::File file(std::filesystem::path("no/such/file.toml"));
  CHECK(file.finish().size() == 1);
}

TEST_CASE("Near misses") {
  CHECK(strict::edit_distance("glucose", "glucos") == 1);
  CHECK(strict::nearest("glucos", {"urea", "glucose", "lactose"}) == "glucose");
  CHECK(strict::nearest("xyz", {"urea", "glucose"}).empty());
  CHECK(strict::suggestion("xyz", {"urea", "glucose"}) == "one of: urea, glucose");
}

TEST_CASE("A letter no key may hold is one problem, at its line") {
  strict::File file("a = 1\nE\xC2\xBDtle n?\n", "half.toml"); // found by fuzzing
  const scenario::Problems problems = file.finish();
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].line == 2);
}
