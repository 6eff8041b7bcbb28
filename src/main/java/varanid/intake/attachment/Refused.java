package varanid.intake.attachment;

/** A file that is not kept: what is wrong with it, and what would be right. */
final class Refused extends Exception {

    private static final long serialVersionUID = 1L;

    private final String wrong;
    private final String right;

    Refused(String wrong, String right) {
        super(wrong, null, false, false);
        this.wrong = wrong;
        this.right = right;
    }

    String wrong() {
        return wrong;
    }

    String right() {
        return right;
    }
}
