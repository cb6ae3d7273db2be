#pragma once

// What a store must do, whichever database is behind it. Each takes the address of an empty one.

#include <string>

namespace matula::test {

void keeps_a_sitting(const std::string& address);
void knows_what_it_has(const std::string& address);
void puts_the_longer_in_place(const std::string& address);
void names_the_same_log(const std::string& address);
void finds_what_is_to_be_reviewed(const std::string& address);
void keeps_both_scores(const std::string& address);
void forgets_a_student(const std::string& address);
void forgets_at_the_last_day(const std::string& address);
void goes_on_from_the_first_schema(const std::string& address);
void refuses_a_newer_schema(const std::string& address);

} // namespace matula::test
