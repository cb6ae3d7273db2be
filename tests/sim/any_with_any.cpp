// Anything with anything: random bottles over random specimens, in any order and volume, heated, mixed and
// left to stand. Every law holds after every step. Most sequences are played with well-mixed portions, where
// all chemistry happens; a share with columns, where heat, layers and settling act, and a share on the full
// bench.
//
// MATULA_SEQUENCES=50000 plays more; MATULA_SEQUENCE=17 plays one alone and tells its steps.
#include "tests/sim/any_bench.hpp"
#include "tests/sim/any_support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <iostream>
#include <mutex>
#include <thread>

using namespace matula;
using namespace matula::tests;

namespace {

constexpr int usual_sequences = 10000;
constexpr int column_every = 10; // one in so many sequences
constexpr int bench_every = 100;

struct Tally {
  std::set<Pair> met;
  std::vector<std::string> broken;
  int portions = 0;
  int columns = 0;
  int benches = 0;
  std::size_t steps = 0;
};

void add(Tally& all, const Tally& part) {
  all.met.insert(part.met.begin(), part.met.end());
  all.broken.insert(all.broken.end(), part.broken.begin(), part.broken.end());
  all.portions += part.portions;
  all.columns += part.columns;
  all.benches += part.benches;
  all.steps += part.steps;
}

void play(int number, Tally& tally, bool tell) {
  const auto seed = static_cast<std::uint64_t>(number);
  Played played;
  if (number % bench_every == 0) {
    played = play_bench(seed);
    ++tally.benches;
  } else if (number % column_every == 0) {
    played = play_columns(seed);
    ++tally.columns;
  } else {
    played = play_portions(seed);
    ++tally.portions;
  }
  tally.met.insert(played.met.begin(), played.met.end());
  tally.steps += played.steps.size();
  if (!played.broken.empty()) {
    std::string words = "sequence " + std::to_string(number) + ": " + played.broken;
    for (const std::string& step : played.steps) {
      words += "\n  " + step;
    }
    tally.broken.push_back(words);
  }
  for (const std::string& step : tell ? played.steps : std::vector<std::string>{}) {
    std::cout << step << '\n';
  }
}

Tally play_all(int count) {
  Tally all;
  std::mutex guard;
  std::atomic<int> next{1};
  const auto work = [&] {
    Tally mine;
    for (int number = next++; number <= count; number = next++) {
      play(number, mine, false);
    }
    const std::lock_guard<std::mutex> lock(guard);
    add(all, mine);
  };
  std::vector<std::thread> threads;
  for (unsigned i = 0; i < std::max(2U, std::thread::hardware_concurrency()); ++i) {
    threads.emplace_back(work);
  }
  for (std::thread& thread : threads) {
    thread.join();
  }
  return all;
}

int asked(const char* name, int otherwise) {
  const char* words = std::getenv(name);
  return words != nullptr ? std::atoi(words) : otherwise;
}

} // namespace

TEST_CASE("any bottle over any specimen in any order keeps every law") {
  (void)any_world();
  (void)conserved();
  if (const int only = asked("MATULA_SEQUENCE", 0); only > 0) {
    Tally tally;
    play(only, tally, true);
    CHECK(tally.broken == std::vector<std::string>{});
    return;
  }
  const Tally tally = play_all(asked("MATULA_SEQUENCES", usual_sequences));
  const std::size_t bottles = any_world().catalogue.reagents.size();
  const std::size_t pairs = bottles * (bottles - 1) / 2;
  std::cout << "Random mixing: " << tally.portions << " sequences of portions, " << tally.columns
            << " of columns, " << tally.benches << " on the full bench, " << tally.steps << " steps; "
            << tally.met.size() << " of " << pairs << " pairs of bottles met, " << conserved().count()
            << " conserved sums held.\n";
  for (std::size_t i = 0; i < std::min<std::size_t>(tally.broken.size(), 5); ++i) {
    FAIL_CHECK(tally.broken[i]);
  }
  CHECK(tally.broken.size() == 0);
  CHECK(tally.met.size() == pairs);
}
