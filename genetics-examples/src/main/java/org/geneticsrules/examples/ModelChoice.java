package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that choose a model: one of a plug-in by its id, or one's own from files. */
final class ModelChoice {

    @Option(
            names = "--model",
            paramLabel = "ID",
            description = "The model to use, by its id (see: genetics models). Default: the ferret model.")
    private @Nullable String id;

    @Option(names = "--file", paramLabel = "FILE", description = "A model of one's own, in place of --model.")
    private @Nullable Path file;

    @Option(
            names = "--catalogue",
            paramLabel = "FILE",
            description = "The catalogue of traits that the model in --file names, unless a plug-in has it.")
    private List<Path> catalogues = new ArrayList<>();

    @Option(names = "--cautions", paramLabel = "FILE", description = "Further cautions, for the model in --file.")
    private List<Path> cautions = new ArrayList<>();

    /** The model chosen. */
    Model model() {
        return file == null ? Shelf.openFor(id).model(id) : read(file, Shelf.open());
    }

    /** The answers under the model chosen, with all cautions that belong to it. */
    Answers answers() {
        Shelf shelf = file == null ? Shelf.openFor(id) : Shelf.open();
        Model model = file == null ? shelf.model(id) : read(file, shelf);
        List<CautionSet> sets = new ArrayList<>(shelf.cautions(model));
        for (Path path : cautions) {
            sets.add(reading(path, reader -> reader.readCautions(Source.of(path), model.catalogue())));
        }
        return Answers.of(CompiledModel.of(model), sets);
    }

    private Model read(Path path, Shelf shelf) {
        List<Catalogue> known = new ArrayList<>();
        for (Path catalogue : catalogues) {
            known.add(reading(catalogue, reader -> reader.readCatalogue(Source.of(catalogue))));
        }
        known.addAll(shelf.catalogues());
        return reading(path, reader -> reader.readModel(Source.of(path), known));
    }

    private static <T> T reading(Path path, Function<DocumentReader, T> read) {
        try {
            return read.apply(Documents.reader());
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(path.toString(), e.problems()));
        }
    }
}
