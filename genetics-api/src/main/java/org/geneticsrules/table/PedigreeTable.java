package org.geneticsrules.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * Reads and writes pedigrees as CSV tables; the package's description tells which columns there are and what stands in them.
 *
 * <pre>{@code
 * Pedigree kennel = PedigreeTable.of("example.kennel", "1").read(Path.of("kennel.csv"));
 * String csv = PedigreeTable.write(kennel);
 * }</pre>
 *
 * <p>What is written reads back as an equal pedigree, if the caller states the same id, version, title and catalogue, and nothing was
 * corrected. Of many kits without further records {@link #writeCounted(Pedigree)} makes a shorter table, which does not keep their ids.
 *
 * <p>Immutable and thread-safe.
 */
public final class PedigreeTable {

    private final String id;
    private final String version;
    private final Optional<String> title;
    private final Optional<Reference> catalogue;
    private final ColumnNames names;

    private PedigreeTable(
            String id, String version, Optional<String> title, Optional<Reference> catalogue, ColumnNames names) {
        this.id = id;
        this.version = version;
        this.title = title;
        this.catalogue = catalogue;
        this.names = names;
    }

    /**
     * Returns a reader of tables that gives pedigrees an id and a version, which no column states.
     *
     * @param id id of the pedigree
     * @param version its version
     * @return a reader of tables with the standard words in their headers
     * @throws IllegalArgumentException if one is blank
     */
    public static PedigreeTable of(String id, String version) {
        if (id.isBlank() || version.isBlank()) {
            throw new IllegalArgumentException(
                    "a pedigree has an id and a version, but they were \"" + id + "\" and \"" + version + "\"");
        }
        return new PedigreeTable(id, version, Optional.empty(), Optional.empty(), ColumnNames.standard());
    }

    /**
     * Returns this reader with a title for the pedigree.
     *
     * @param text the title
     * @return a copy
     */
    public PedigreeTable title(String text) {
        return new PedigreeTable(id, version, Optional.of(text), catalogue, names);
    }

    /**
     * Returns this reader with the catalogue whose traits the columns name.
     *
     * @param reference id and version of the catalogue
     * @return a copy
     */
    public PedigreeTable catalogue(Reference reference) {
        return new PedigreeTable(id, version, title, Optional.of(reference), names);
    }

    /**
     * Returns this reader with other words in the header.
     *
     * @param words the words
     * @return a copy
     */
    public PedigreeTable columns(ColumnNames words) {
        return new PedigreeTable(id, version, title, catalogue, words);
    }

    /**
     * Reads a file.
     *
     * @param file the file, of at most 64 MiB
     * @return the pedigree
     * @throws ProblemsException if it is no such table, or its records do not fit together: all problems of the first stage that found
     *     any, each with the line and the column of its cell
     * @throws UncheckedIOException if the file cannot be read
     */
    public Pedigree read(Path file) {
        return read(bytes(file));
    }

    /**
     * Reads a file and compares what it records with a model.
     *
     * @param file the file, of at most 64 MiB
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @return the pedigree
     * @throws ProblemsException if it is no such table, its records do not fit together, or the model does not know something they name
     * @throws UncheckedIOException if the file cannot be read
     */
    public Pedigree read(Path file, Model model) {
        return read(Sheet.read(bytes(file)), pedigree -> pedigree.problemsUnder(model));
    }

    /**
     * Reads a file, reads the names that it says animals were called by, and compares all with a model.
     *
     * @param file the file, of at most 64 MiB
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @param vocabularies the vocabularies at hand, on the catalogue of the model
     * @return the pedigree, and what its names say
     * @throws ProblemsException if it is no such table, its records do not fit together, the model does not know something they name, or a
     *     name cannot be read, see {@link NamedRecords#of(Pedigree, Collection, Model)}
     * @throws UncheckedIOException if the file cannot be read
     */
    public NamedRecords read(Path file, Model model, Collection<Vocabulary> vocabularies) {
        return read(Sheet.read(bytes(file)), model, vocabularies);
    }

    /**
     * Reads a text, reads the names that it says animals were called by, and compares all with a model.
     *
     * @param csv the table
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @param vocabularies the vocabularies at hand, on the catalogue of the model
     * @return the pedigree, and what its names say
     * @throws ProblemsException as the reading of a file throws
     */
    public NamedRecords read(String csv, Model model, Collection<Vocabulary> vocabularies) {
        return read(Sheet.read(csv), model, vocabularies);
    }

    private NamedRecords read(Sheet sheet, Model model, Collection<Vocabulary> vocabularies) {
        List<NamedRecords> read = new ArrayList<>();
        read(sheet, pedigree -> {
            read.add(NamedRecords.of(pedigree, vocabularies, model));
            return List.of();
        });
        return read.get(0);
    }

    private static byte[] bytes(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(Sheet.MOST_BYTES + 1); // one more than may be read, so that it is refused
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be read", e);
        }
    }

    /**
     * Reads bytes.
     *
     * @param utf8 the table in UTF-8, with or without a byte order mark, at most 64 MiB
     * @return the pedigree
     * @throws ProblemsException if it is no such table, or its records do not fit together
     */
    public Pedigree read(byte[] utf8) {
        return read(Sheet.read(utf8), pedigree -> List.of());
    }

    /**
     * Reads a text.
     *
     * @param csv the table
     * @return the pedigree
     * @throws ProblemsException if it is no such table, or its records do not fit together
     */
    public Pedigree read(String csv) {
        return read(Sheet.read(csv), pedigree -> List.of());
    }

    /**
     * Reads a text and compares what it records with a model.
     *
     * @param csv the table
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @return the pedigree
     * @throws ProblemsException if it is no such table, its records do not fit together, or the model does not know something they name
     */
    public Pedigree read(String csv, Model model) {
        return read(Sheet.read(csv), pedigree -> pedigree.problemsUnder(model));
    }

    private Pedigree read(Sheet sheet, Function<Pedigree, List<Problem>> unknown) {
        Headers headers = new Headers(sheet, names);
        refuse(headers.problems());
        Drafts drafts = new Drafts();
        Problems problems = new Problems(Stage.SHAPE);
        RowReader rows = new RowReader(sheet, headers, problems, drafts);
        rows.read();
        PedigreeBuilder builder = Pedigree.builder(id, version);
        title.ifPresent(builder::title);
        catalogue.ifPresent(builder::catalogue);
        new Families(rows, problems, drafts).fill(builder);
        Places places = new Places(sheet, headers, drafts);
        refuse(problems.list().stream().map(places::ofCell).toList());
        try {
            Pedigree pedigree = builder.build();
            refuse(unknown.apply(pedigree));
            return pedigree;
        } catch (ProblemsException e) {
            throw new ProblemsException(e.problems().stream()
                    .filter(one -> !places.repeats(one))
                    .map(places::ofRecord)
                    .toList());
        }
    }

    private static void refuse(List<Problem> problems) {
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
    }

    /**
     * Returns the table of a pedigree with the standard words in its header. Title, catalogue and corrections are left out.
     *
     * @param pedigree a pedigree
     * @return CSV by RFC 4180, lines ending in carriage return and line feed; only columns that hold something
     */
    public static String write(Pedigree pedigree) {
        return write(pedigree, ColumnNames.standard());
    }

    /**
     * Returns the table of a pedigree.
     *
     * @param pedigree a pedigree
     * @param words the words in its header
     * @return CSV by RFC 4180, lines ending in carriage return and line feed; only columns that hold something
     */
    public static String write(Pedigree pedigree, ColumnNames words) {
        return new TableWriter(words, pedigree).text();
    }

    /**
     * Returns the table of a pedigree in which kits are counted as in a notebook: those of one litter that are recorded alike stand in one
     * row with their number and without their ids. Kits whose ids other records need, and those of whom one row cannot say all, keep rows
     * of their own.
     *
     * <p>What is written reads back as the same records; only the kits that were counted have other ids, and stand after their litter-mates.
     *
     * @param pedigree a pedigree
     * @return CSV by RFC 4180 with the standard words in its header
     */
    public static String writeCounted(Pedigree pedigree) {
        return writeCounted(pedigree, ColumnNames.standard());
    }

    /**
     * Returns the table of a pedigree in which kits that are recorded alike are counted.
     *
     * @param pedigree a pedigree
     * @param words the words in its header
     * @return CSV by RFC 4180, see {@link #writeCounted(Pedigree)}
     */
    public static String writeCounted(Pedigree pedigree, ColumnNames words) {
        return new TableWriter(words, pedigree).countedText();
    }
}
