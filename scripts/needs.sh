# What ./run and ./test share: is the SDK there, and what else must be installed. Read by them, not run by itself.

needed_sdk=$(sed -n 's/.*"version": *"\([0-9][0-9.]*\)".*/\1/p' global.json)
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1

# Stops with one sentence where no fitting SDK is there. `dotnet --version` fails by itself where global.json asks for a newer one.
need_sdk() {
  if ! command -v dotnet >/dev/null 2>&1 || ! dotnet --version >/dev/null 2>&1; then
    echo "Trundle needs the .NET SDK ${needed_sdk%%.*} (${needed_sdk} or a later ${needed_sdk%.*} one): install it and run this again." >&2
    exit 1
  fi
}

# need_package COMMAND PACKAGE: installs a Debian package where its command is missing, and says so.
need_package() {
  command -v "$1" >/dev/null 2>&1 || install_package "$2" "its command $1"
}

# need_module MODULE PACKAGE: the same for a module of the system's own python3, which is the one that Debian's packages serve.
need_module() {
  /usr/bin/python3 -c "import $1" >/dev/null 2>&1 || install_package "$2" "python's module $1"
}

# need_header HEADER PACKAGE: the same for a header of the system's C library, without which gcc links nothing.
need_header() {
  [ -e "/usr/include/$1" ] || install_package "$2" "its header $1"
}

install_package() {
  local as_root=""
  if [ "$(id -u)" -ne 0 ]; then
    as_root="sudo"
    command -v sudo >/dev/null 2>&1 || { echo "The Debian package $1 is missing and needs root to install: apt-get install $1" >&2; exit 1; }
  fi
  echo "Installing the Debian package $1 (for $2)."
  if ! $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$1" >/dev/null 2>&1; then
    $as_root apt-get update -qq && $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$1" >/dev/null \
      || { echo "The Debian package $1 could not be installed." >&2; exit 1; }
  fi
}

# newer_than STAMP: is a source newer than the last build of that stamp? Then it must be built again.
newer_than() {
  [ ! -f "$1" ] || [ -n "$(find src Directory.Build.props Directory.Packages.props global.json -newer "$1" -print -quit)" ]
}

machine=linux-$(uname -m | sed 's/x86_64/x64/; s/aarch64/arm64/')

# Builds the command where a source is newer than the last build, and says so; a second start asks the SDK nothing.
# Published, not only built: it starts in a third of the time, and the bay's pages go out trimmed and compressed.
command=artifacts/command/trundle
build_command() {
  local stamp=artifacts/run.built
  if [ -x "$command" ] && ! newer_than "$stamp"; then
    return 0
  fi
  need_sdk
  echo "Building Trundle; the first time NuGet fetches the packages named in Directory.Packages.props." >&2
  mkdir -p artifacts
  touch "$stamp.now"
  dotnet publish src/Trundle.Cli -c Release -r "$machine" --no-self-contained -o artifacts/command -v q -clp:ErrorsOnly >&2
  mv "$stamp.now" "$stamp"
}

# Builds the command's operations as machine code, which starts many times sooner. Where that cannot be done the whole command answers the same,
# only later: so a failure is said once, and not tried again before a source has changed.
quick=artifacts/command/quick/trundle
build_quick() {
  local stamp=artifacts/quick.built
  newer_than "$stamp" || return 0
  need_sdk
  mkdir -p artifacts
  touch "$stamp.now"
  rm -f "$quick"
  echo "Building the quick half of the command." >&2
  (need_package gcc gcc && need_header stdio.h libc6-dev) >&2 \
    && dotnet publish src/Trundle.Quick -c Release -r "$machine" -o artifacts/command/quick -v q -clp:ErrorsOnly >&2 \
    || echo "It could not be built; every command works without it, only slower." >&2
  mv "$stamp.now" "$stamp"
}
