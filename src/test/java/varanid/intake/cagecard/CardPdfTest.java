package varanid.intake.cagecard;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import varanid.intake.platform.web.PdfUa;

/** The PDF, read by others than those who wrote it. */
class CardPdfTest {

    /** About what a telephone sees of an A6 card at arm's length. */
    private static final int DOTS_PER_INCH = 150;

    /** The height of the smallest letters but those of the address, in points. */
    private static final float LINE = 6;

    @ParameterizedTest
    @MethodSource("varanid.intake.cagecard.CardFixtures#all")
    void isOneTaggedPageWithItsFontsAndTheCodeOfTheAnimalsPage(CageCard card) throws IOException, ReaderException {
        byte[] pdf = CardPages.pdf(card);

        assertThat(PdfUa.faults(pdf)).isEmpty();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            PDPage page = document.getPage(0);
            assertThat(millimetres(page.getMediaBox().getWidth())).isEqualTo(148);
            assertThat(millimetres(page.getMediaBox().getHeight())).isEqualTo(105);
            for (COSName font : page.getResources().getFontNames()) {
                assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
            }
            assertThat(code(new PDFRenderer(document).renderImageWithDPI(0, DOTS_PER_INCH)))
                    .isEqualTo(card.address().toString());
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            // What comes last on the card is there: nothing was pushed off it.
            assertThat(text)
                    .contains("Printed 26 Nov 2026, 07:40.")
                    .contains("goes out of date")
                    .contains("never on the animal")
                    .contains("weak defences");
            assertThat(text.replace(" ", "")).contains(card.address().toString());
            List<Float> lines = new ArrayList<>(Lines.of(document));
            float last = lines.get(lines.size() - 1);
            float before = lines.get(lines.size() - 2);
            assertThat(last - before)
                    .as("the last line is apart from the others")
                    .isGreaterThan(LINE);
        }
    }

    @Test
    void holdsFourCardsOnASheetAndBreaksNone() throws IOException {
        List<CageCard> six = CardFixtures.all().subList(0, 6);
        byte[] pdf = CardPages.pdf("Boat house", six);

        assertThat(PdfUa.faults(pdf)).isEmpty();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat(codesOfQuarters(document, 0, 4)).containsExactlyElementsOf(addresses(six.subList(0, 4)));
            assertThat(codesOfQuarters(document, 1, 2)).containsExactlyElementsOf(addresses(six.subList(4, 6)));
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            assertThat(first.getText(document).split("goes out of date", -1)).hasSize(5);
        }
    }

    @Test
    void saysThatNobodyStandsInARoom() throws IOException {
        byte[] pdf = CardPages.pdf("Boat house", List.of());

        assertThat(PdfUa.faults(pdf)).isEmpty();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document)).contains("Nobody stands in this room.");
        }
    }

    private static List<String> addresses(List<CageCard> cards) {
        return cards.stream().map(card -> card.address().toString()).toList();
    }

    private static long millimetres(float points) {
        return Math.round(points / 72 * 25.4);
    }

    /** What the one code in a picture says. */
    private static String code(BufferedImage picture) throws ReaderException {
        int width = picture.getWidth();
        int height = picture.getHeight();
        int[] pixels = picture.getRGB(0, 0, width, height, null, 0, width);
        return new QRCodeReader()
                .decode(
                        new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels))),
                        Map.of(DecodeHintType.TRY_HARDER, true))
                .getText();
    }

    /** What the codes in the four quarters of a sheet say, as far as there are any. */
    private static List<String> codesOfQuarters(PDDocument document, int page, int cards) throws IOException {
        BufferedImage sheet = new PDFRenderer(document).renderImageWithDPI(page, DOTS_PER_INCH);
        int width = sheet.getWidth() / 2;
        int height = sheet.getHeight() / 2;
        List<String> codes = new ArrayList<>();
        for (int card = 0; card < cards; card++) {
            BufferedImage quarter = sheet.getSubimage(card % 2 * width, card / 2 * height, width, height);
            try {
                codes.add(code(quarter));
            } catch (ReaderException e) {
                throw new AssertionError("no code on card " + card, e);
            }
        }
        return codes;
    }

    /** Where lines of text stand, in points from the top. */
    private static final class Lines extends PDFTextStripper {

        private final TreeSet<Float> found = new TreeSet<>();

        static TreeSet<Float> of(PDDocument document) throws IOException {
            Lines lines = new Lines();
            lines.getText(document);
            return lines.found;
        }

        @Override
        protected void processTextPosition(TextPosition text) {
            found.add(text.getYDirAdj());
            super.processTextPosition(text);
        }
    }
}
