package varanid.intake.platform.reference;

/** A sentence of a file with names in braces. */
public final class Sentence {

    private Sentence() {}

    /**
     * The sentence filled in, in one pass: a value that has braces of its own stays as it is.
     *
     * @param path the file that it is of, for whoever has to mend it
     * @param namesAndValues in turn; those that the sentence does not ask for are left out
     * @throws IllegalStateException where the sentence asks for a name that is not given
     */
    public static String fill(String path, String pattern, String... namesAndValues) {
        StringBuilder filled = new StringBuilder();
        int at = 0;
        while (at < pattern.length()) {
            int open = pattern.indexOf('{', at);
            int close = open < 0 ? -1 : pattern.indexOf('}', open);
            if (close < 0) {
                break;
            }
            filled.append(pattern, at, open)
                    .append(value(path, pattern, pattern.substring(open + 1, close), namesAndValues));
            at = close + 1;
        }
        return filled.append(pattern.substring(at)).toString();
    }

    private static String value(String path, String pattern, String name, String... namesAndValues) {
        for (int i = 0; i + 1 < namesAndValues.length; i += 2) {
            if (namesAndValues[i].equals(name)) {
                return namesAndValues[i + 1];
            }
        }
        throw new IllegalStateException(path + " asks for {" + name + "} in: " + pattern);
    }
}
