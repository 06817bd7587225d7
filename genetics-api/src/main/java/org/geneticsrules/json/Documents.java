package org.geneticsrules.json;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.geneticsrules.caution.CautionDocument;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Node;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.patch.PatchDocument;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.CatalogueDocument;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * Reads and writes documents as JSON.
 *
 * <pre>{@code
 * DocumentReader reader = Documents.reader();
 * Catalogue traits = reader.readCatalogue(Source.of(Path.of("pea-traits.json")));
 * Model pea = reader.readModel(Source.of(Path.of("pea.json")), List.of(traits));
 * String text = Documents.write(pea);
 * }</pre>
 *
 * <p>What is written reads back as an equal document, and one document has one text: members in declared order, lines broken by a
 * fixed rule, a newline at the end.
 *
 * <p>Stateless and thread-safe.
 */
public final class Documents {

    private Documents() {}

    /**
     * Returns a reader with the standard limits.
     *
     * @return a reader
     */
    public static DocumentReader reader() {
        return reader(Limits.standard());
    }

    /**
     * Returns a reader with other limits.
     *
     * @param limits how large a document may be
     * @return a reader
     */
    public static DocumentReader reader(Limits limits) {
        return new DocumentReader(limits);
    }

    /**
     * Returns the text of a catalogue.
     *
     * @param catalogue a catalogue
     * @return JSON, ending in a newline
     */
    public static String write(Catalogue catalogue) {
        return write(CatalogueDocument.of(catalogue));
    }

    /**
     * Returns the text of a model.
     *
     * @param model a model
     * @return JSON, ending in a newline
     */
    public static String write(Model model) {
        return write(ModelDocument.of(model));
    }

    /**
     * Returns the text of a set of cautions.
     *
     * @param cautions a set of cautions
     * @return JSON, ending in a newline
     */
    public static String write(CautionSet cautions) {
        return write(CautionDocument.of(cautions));
    }

    /**
     * Returns the text of a patch.
     *
     * @param patch a patch
     * @return JSON, ending in a newline
     */
    public static String write(Patch patch) {
        return write(PatchDocument.of(patch));
    }

    /**
     * Returns the text of a pedigree.
     *
     * @param pedigree a pedigree
     * @return JSON, ending in a newline
     */
    public static String write(Pedigree pedigree) {
        return write(PedigreeDocument.of(pedigree));
    }

    /**
     * Returns the text of a vocabulary.
     *
     * @param vocabulary a vocabulary
     * @return JSON, ending in a newline
     */
    public static String write(Vocabulary vocabulary) {
        return write(vocabulary.toDocument());
    }

    /**
     * Returns the text of a frozen analysis.
     *
     * @param frozen a question with all that its answer hangs on, and the answer
     * @return JSON, ending in a newline
     */
    public static String write(FrozenAnalysis frozen) {
        return write(frozen.toNode());
    }

    /**
     * Returns the JSON Schema (2020-12) of a kind of document. What the schema refuses, the reader refuses too; the reader also
     * refuses what no schema can say, such as overlapping cases.
     *
     * @param kind a kind of document
     * @return the schema as JSON text
     */
    public static String schema(DocumentKind kind) {
        return Shared.schema(kind.word());
    }

    /**
     * Returns the text of any document or part of one.
     *
     * @param document a document in plain form
     * @return JSON, ending in a newline
     */
    public static String write(Node document) {
        return JsonText.of(document);
    }

    /**
     * Writes a text to a file at once: the file keeps its old content or has all of the new, even if the machine fails meanwhile.
     *
     * @param text what {@code write} returned
     * @param file the file; created or replaced, beside a temporary file that is moved onto it
     * @throws UncheckedIOException if it cannot be written
     */
    public static void save(String text, Path file) {
        try {
            AtomicFile.write(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be written", e);
        }
    }
}
