// The record of a float is kept from day to day, as everything that is written down.
#include "engine/desk/float_book.hpp"
#include "engine/desk/float_log.hpp"
#include "engine/desk/ground.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

using namespace matula;
using namespace matula::desk;

namespace {

std::filesystem::path fresh_file() {
  const auto file =
      std::filesystem::temp_directory_path() / ("float-" + std::to_string(::getpid()) + ".record");
  std::filesystem::remove(file);
  return file;
}

const Ground& ground() {
  static const auto loaded = Ground::load();
  REQUIRE(loaded);
  return *loaded;
}

FloatBook open(const std::filesystem::path& file) {
  auto book = FloatBook::load(ground(), file);
  REQUIRE(book);
  return std::move(*book);
}

std::size_t written(const FloatBook& book, std::size_t series) {
  std::size_t count = 0;
  for (const auto& line : book.record(series).lines) {
    count += line.written ? 1 : 0;
  }
  return count;
}

} // namespace

TEST_CASE("mornings written in one run stand in the next, with their marks; begun afresh is afresh") {
  const auto file = fresh_file();
  {
    FloatBook book = open(file);
    REQUIRE(book.write(0, 0.001, FloatDecision::Correct));
    REQUIRE(book.write(0, std::nullopt, FloatDecision::Use));
    REQUIRE(book.write(1, 0.0, FloatDecision::Use));
  }
  {
    FloatBook book = open(file);
    REQUIRE(written(book, 0) == 2);
    REQUIRE(written(book, 1) == 1);
    const auto lines = book.record(0).lines;
    CHECK(lines[0].error == 0.001);
    CHECK(lines[0].decision == FloatDecision::Correct);
    CHECK_FALSE(lines[1].error);
    REQUIRE(book.clear(0));
  }
  CHECK(written(open(file), 0) == 0);
  CHECK(written(open(file), 1) == 1);
}

TEST_CASE("a line cut off by a crash is passed over and swallows nothing") {
  const auto file = fresh_file();
  REQUIRE(open(file).write(0, 0.001, FloatDecision::Correct));
  std::ofstream(file, std::ios::app) << R"({"float": "st)";
  CHECK(written(open(file), 0) == 1);
  REQUIRE(open(file).write(0, 0.001, FloatDecision::Correct));
  CHECK(written(open(file), 0) == 2);
}

TEST_CASE("what the disk refuses is not shown as written") {
  FloatBook book = open("/nowhere/at/all/float.record");
  CHECK_FALSE(book.write(0, 0.001, FloatDecision::Correct));
  CHECK(written(book, 0) == 0);
}
