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

# Builds the command where a source is newer than the last build, and says so; a second start asks the SDK nothing.
# Published, not only built: it starts in a third of the time, and the bay's pages go out trimmed and compressed.
command=artifacts/command/trundle
build_command() {
  local stamp=artifacts/run.built
  if [ -x "$command" ] && [ -f "$stamp" ] \
    && [ -z "$(find src Directory.Build.props Directory.Packages.props global.json -newer "$stamp" -print -quit)" ]; then
    return 0
  fi
  need_sdk
  echo "Building Trundle; the first time NuGet fetches the packages named in Directory.Packages.props." >&2
  mkdir -p artifacts
  touch "$stamp.now"
  local machine
  machine=linux-$(uname -m | sed 's/x86_64/x64/; s/aarch64/arm64/')
  dotnet publish src/Trundle.Cli -c Release -r "$machine" --no-self-contained -o artifacts/command -v q -clp:ErrorsOnly >&2
  mv "$stamp.now" "$stamp"
}
