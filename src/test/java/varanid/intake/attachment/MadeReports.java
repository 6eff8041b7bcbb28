package varanid.intake.attachment;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/** PDFs for tests. */
final class MadeReports {

    /** Changes a document before it is written. */
    interface Change {
        void to(PDDocument document) throws IOException;
    }

    private MadeReports() {}

    static byte[] plain() {
        return with(document -> {});
    }

    /** Written with its objects packed into streams, as PDF 1.5 and later do. */
    static byte[] with(Change change) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            change.to(document);
            document.save(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** With an object of its own that the catalogue leads to. */
    static byte[] withObject(UnaryOperator<COSDictionary> fill) {
        return with(document -> {
            COSDictionary object = fill.apply(new COSDictionary());
            document.getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("Extra"), object);
        });
    }

    /** An action of that kind in the first page. */
    static byte[] withAction(String kind) {
        return withObject(object -> {
            object.setItem(COSName.S, COSName.getPDFName(kind));
            return object;
        });
    }

    /** Written by hand, with a stream of these dictionary entries and bytes, and no table of where things are. */
    static byte[] byHand(String entries, byte[] stream) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("""
                %PDF-1.4
                1 0 obj <</Type/Catalog/Pages 2 0 R>> endobj
                2 0 obj <</Type/Pages/Kids[3 0 R]/Count 1>> endobj
                3 0 obj <</Type/Page/Parent 2 0 R/MediaBox[0 0 100 100]/Contents 4 0 R>> endobj
                """.getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(("4 0 obj <<" + entries + "/Length " + stream.length + ">>\nstream\n")
                .getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(stream);
        out.writeBytes("\nendstream endobj\ntrailer <</Root 1 0 R>>\n%%EOF\n".getBytes(StandardCharsets.US_ASCII));
        return out.toByteArray();
    }

    static byte[] deflated(byte[] plain) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream packed = new DeflaterOutputStream(out)) {
            packed.write(plain);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    static byte[] zeros(long count) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream packed = new DeflaterOutputStream(out)) {
            byte[] piece = new byte[1 << 20];
            for (long left = count; left > 0; left -= piece.length) {
                packed.write(piece);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
