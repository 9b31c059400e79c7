package palmturn.trial;

/** The side of the moving hand that touched the target palm. */
public enum Side implements Coded {
  PALM("palm"),
  BACK("back"),
  UNKNOWN("unknown");

  private final String code;

  Side(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
