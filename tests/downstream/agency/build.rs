fn main() -> std::process::ExitCode {
    oxyfolio::compile::build_script("rules")
}
