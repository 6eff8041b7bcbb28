package varanid.intake.scoring;

/**
 * One thing that is wrong with a checklist or a look.
 *
 * @param pointer RFC 6901 JSON pointer into the document, beginning with a slash
 * @param wrong what was found
 * @param right what would have been accepted
 */
public record Fault(String pointer, String wrong, String right) {

    @Override
    public String toString() {
        return pointer + ": " + wrong + "; " + right;
    }
}
