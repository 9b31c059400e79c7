@echo off
rem Starts Palmturn from its sources, building it the first time.
setlocal
set "HOME_DIR=%~dp0.."
if not defined PALMTURN_JAR set "PALMTURN_JAR=palmturn.jar"
set "JAR=%HOME_DIR%\target\%PALMTURN_JAR%"
if defined JAVA_HOME (set "JAVA=%JAVA_HOME%\bin\java.exe") else (set "JAVA=java.exe")
"%JAVA%" -version >nul 2>&1
if errorlevel 1 (
  echo palmturn: no Java found: install a JDK 17 or newer, or set JAVA_HOME to one 1>&2
  exit /b 1
)
if exist "%JAR%" if exist "%HOME_DIR%\target\lib" goto run
where mvn >nul 2>&1
if errorlevel 1 (
  echo palmturn: not built yet, and Maven ^(mvn^) is not installed: install it, then start again 1>&2
  exit /b 1
)
echo palmturn: building for the first time; fetches about 200 MB of libraries and build tools, once 1>&2
pushd "%HOME_DIR%"
call mvn -B -Dmaven.test.skip=true -Dspotless.check.skip=true package
if errorlevel 1 (
  popd
  echo palmturn: the build failed; if it can't reach its registry, check the network or Maven's proxy settings 1>&2
  exit /b 1
)
popd
:run
"%JAVA%" -XX:+UseSerialGC -Dfile.encoding=UTF-8 "-Dpalmturn.home=%HOME_DIR%" %PALMTURN_JAVA_OPTS% -jar "%JAR%" %*
exit /b %ERRORLEVEL%
