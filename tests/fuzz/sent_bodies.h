// Bodies of the requests that are of no plan: kit, trials, judgements, strikes, notebooks, tables.
#pragma once

#include <string>
#include <string_view>

namespace keenfall::fuzz {

// path: of the request; a body is read as its route reads it. Aborts where what was read does not
// hold: a text of a person is short and can be seen, and what was refused is told in JSON.
void body_as_sent(std::string_view path, const std::string& body);

}  // namespace keenfall::fuzz
