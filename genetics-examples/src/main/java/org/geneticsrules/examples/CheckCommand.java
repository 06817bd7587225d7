package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.geneticsrules.json.DocumentKind;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Limits;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks documents and reports all that is wrong with them. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Checks catalogues, models, patches, cautions, vocabularies and pedigrees, and reports each problem with its place.",
        footer = {
            "",
            "A model may name a catalogue among the files or one of a plug-in, and a patch may name such a",
            "model; names in a pedigree are read with such vocabularies. Problems are reported as",
            "file:line:column: pointer: what is wrong; expected ...; did you mean ...? [code]",
            "",
            "  genetics check my-traits.json my-model.json"
        })
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "The documents to check, in any order.")
    private List<Path> files = new ArrayList<>();

    private final DocumentReader reader = Documents.reader();

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Map<Path, String> findings = new LinkedHashMap<>();
        Map<Path, DocumentKind> kinds = new LinkedHashMap<>();
        List<Catalogue> catalogues = new ArrayList<>();
        for (Path file : files) {
            checking(file, findings, () -> {
                DocumentKind kind = reader.kindOf(Source.of(file));
                kinds.put(file, kind);
                if (kind == DocumentKind.CATALOGUE) {
                    catalogues.add(reader.readCatalogue(Source.of(file)));
                }
            });
        }
        Shelf shelf = Shelf.open();
        catalogues.addAll(shelf.catalogues());
        List<Model> models = new ArrayList<>();
        List<Vocabulary> vocabularies = new ArrayList<>(shelf.vocabularies());
        kinds.forEach((file, kind) -> checking(file, findings, () -> {
            if (kind == DocumentKind.MODEL) {
                models.add(reader.readModel(Source.of(file), catalogues));
            } else if (kind == DocumentKind.CAUTIONS) {
                reader.readCautions(Source.of(file));
            } else if (kind == DocumentKind.VOCABULARY) {
                vocabularies.add(reader.readVocabulary(Source.of(file), catalogues));
            } else if (kind == DocumentKind.ANALYSIS) {
                Documents.reader(Limits.registry()).readAnalysis(Source.of(file));
            }
        }));
        kinds.forEach((file, kind) -> checking(file, findings, () -> {
            if (kind == DocumentKind.PEDIGREE) {
                reader.readPedigree(Source.of(file), vocabularies);
            }
        }));
        models.addAll(shelf.models());
        kinds.forEach((file, kind) -> checking(file, findings, () -> {
            if (kind == DocumentKind.PATCH) {
                reader.readPatch(Source.of(file), models);
            }
        }));
        for (Path file : files) {
            String found = findings.get(file);
            if (found == null) {
                out.println(file + ": no problems");
            } else {
                spec.commandLine().getErr().print(found);
            }
        }
        return findings.isEmpty() ? ExitCodes.ANSWERED : ExitCodes.NOT_UNDERSTOOD;
    }

    private static void checking(Path file, Map<Path, String> findings, Runnable check) {
        try {
            check.run();
        } catch (ProblemsException e) {
            findings.put(file, ProblemText.of(file.toString(), e.problems()));
        } catch (UncheckedIOException e) {
            findings.put(file, "problem: " + ProblemText.sentence(e) + "\n");
        }
    }
}
