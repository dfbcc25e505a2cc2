// A file inside a link: "data:text/csv;charset=utf-8,..." (RFC 2397), which a browser saves without
// fetching anything and without script.
#pragma once

#include <string>
#include <string_view>

namespace keenfall::page {

// Every byte that may not stand in an address is percent-encoded (RFC 3986, section 2.1).
[[nodiscard]] std::string csv_address(std::string_view csv);

}  // namespace keenfall::page
