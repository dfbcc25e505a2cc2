#include "server/tls.h"

#include <boost/beast/core/error.hpp>

#include <string>

namespace keenfall::server {

namespace {

base::Problem cannot_use(const std::string& what,
                         const std::string& file,
                         const boost::beast::error_code& fault) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The " + what + " cannot be used: " + fault.message() + ".",
          .place = {.file = file},
          .accepted = "a certificate and its private key, without a passphrase, in two PEM files"};
}

}  // namespace

base::Result<boost::asio::ssl::context> tls_with(const Certificate& certificate) {
  namespace ssl = boost::asio::ssl;
  boost::beast::error_code fault;
  ssl::context context(ssl::context::tls_server);
  context.set_options(ssl::context::default_workarounds | ssl::context::no_tlsv1 |
                      ssl::context::no_tlsv1_1);
  // A key that is locked is refused, and never asked for at the terminal.
  context.set_password_callback(
      [](std::size_t, ssl::context::password_purpose) { return std::string(); });
  context.use_certificate_chain_file(certificate.chain_file, fault);
  if (fault) return base::failed(cannot_use("certificate", certificate.chain_file, fault));
  context.use_private_key_file(certificate.key_file, ssl::context::pem, fault);
  if (fault) return base::failed(cannot_use("private key", certificate.key_file, fault));
  return context;
}

}  // namespace keenfall::server
