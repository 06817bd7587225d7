package org.geneticsrules.examples;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.json.DocumentKind;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Draft;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Nearest;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that choose a model: one of a plug-in by its id, or one's own from files, and patches on it. */
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

    @Option(
            names = "--patch",
            paramLabel = "PATCH",
            description = {
                "What to assume otherwise: a file, or the id of a patch of a plug-in.",
                "May be repeated; all are for the model chosen."
            })
    private List<String> patches = new ArrayList<>();

    @Option(names = "--cautions", paramLabel = "FILE", description = "Further cautions, for the model in --file.")
    private List<Path> cautions = new ArrayList<>();

    @Option(
            names = "--alone",
            description = "Do not ask rival models. Otherwise each patch of the model and each other model of its "
                    + "plug-in is asked the same (with --patch, the model without it), and the answer says which "
                    + "come to another verdict.")
    private boolean alone;

    /**
     * The model chosen as it is, and the patches chosen with it.
     *
     * @param model the model
     * @param patches the patches, each written for that model
     */
    record Base(Model model, List<Patch> patches) {
        Model patched() {
            return patches.isEmpty() ? model : Documents.reader().apply(model, patches);
        }
    }

    /** The model chosen and the patches on it. */
    Base base() {
        return base(shelf());
    }

    /** Another model: one of a plug-in by its id, or one of the same catalogues from a file. */
    Model other(String stated) {
        Shelf all = Shelf.open();
        return isFile(stated) ? read(Path.of(stated), all) : all.model(stated);
    }

    /** The model chosen, patched. */
    Model model() {
        return model(shelf());
    }

    /** A model to hold against the one chosen: another model, or the unpatched one with a patch; of a plug-in by id, or from a file. */
    HeldModel held(String stated) {
        Shelf all = Shelf.open();
        Model base = base(all).model();
        boolean file = isFile(stated);
        Path path = Path.of(stated);
        boolean isPatch = file
                ? reading(path, reader -> reader.kindOf(Source.of(path))) == DocumentKind.PATCH
                : all.patches(base).stream().anyMatch(patch -> patch.id().equals(stated));
        if (isPatch) {
            List<Patch> patch = List.of(patch(stated, base, all));
            return HeldModel.of(base, patch, Documents.reader().apply(base, patch));
        }
        return HeldModel.of(file ? read(path, all) : plugged(stated, base, all));
    }

    /** Refuses rivals of which one is named twice. */
    static boolean once(List<String> rivals) {
        Set<String> met = new HashSet<>();
        for (String rival : rivals) {
            if (!met.add(rival)) {
                throw new InputException("problem: --rival " + rival + ": named twice; expected each rival once\n");
            }
        }
        return true;
    }

    /** A model of a plug-in; one that is not there may be misspelt, and so may a patch. */
    private static Model plugged(String stated, Model base, Shelf all) {
        try {
            return all.model(stated);
        } catch (ProblemsException e) {
            List<String> known = new ArrayList<>();
            all.patches(base).forEach(patch -> known.add(patch.id()));
            all.models().forEach(model -> known.add(model.id()));
            throw new ProblemsException(e.problems().stream()
                    .map(problem -> problem.code().equals("unknown-model")
                            ? problem.near(near(stated, known))
                                    .expecting("an id that \"genetics models\" lists, or a file")
                            : problem)
                    .toList());
        }
    }

    /** The nearest id; an id may be meant by a part of it. */
    static Optional<String> near(String stated, Collection<String> known) {
        return Nearest.to(stated, known)
                .or(() -> known.stream().filter(id -> id.contains(stated)).findFirst());
    }

    /** The model chosen, with what it was made of. */
    HeldModel held() {
        Base base = base();
        return HeldModel.of(base.model(), base.patches(), base.patched());
    }

    /** How complete the model chosen is; a file that is not patched may contradict itself. */
    Completeness review() {
        if (file == null || !patches.isEmpty()) {
            return Completeness.of(model());
        }
        Path path = file;
        List<Catalogue> known = catalogues(Shelf.open());
        Draft draft = reading(path, reader -> reader.readDraft(Source.of(path), known));
        return Completeness.of(draft);
    }

    /** The answers under the model chosen, with all cautions that belong to it. */
    Answers answers() {
        Shelf shelf = shelf();
        Model model = model(shelf);
        return Answers.of(CompiledModel.of(model), cautions(model)).against(alone ? List.of() : rivals(shelf));
    }

    /** All cautions that belong to the model chosen. */
    List<CautionSet> cautions(Model model) {
        List<CautionSet> sets = new ArrayList<>(shelf().cautions(model));
        for (Path path : cautions) {
            sets.add(reading(path, reader -> reader.readCautions(Source.of(path), model.catalogue())));
        }
        return sets;
    }

    /** What is held instead: of a model as it is, its patches and other models of its plug-in; of a patched one, the model as it is. */
    private List<RivalModel> rivals(Shelf shelf) {
        Base base = base(shelf);
        return base.patches().isEmpty()
                ? shelf.rivals(base.model())
                : List.of(RivalModel.of(base.model().title().orElse(base.model().id()), base::model));
    }

    private Shelf shelf() {
        return file == null && patches.stream().allMatch(ModelChoice::isFile) ? Shelf.openFor(id) : Shelf.open();
    }

    private Model model(Shelf shelf) {
        return base(shelf).patched();
    }

    private Base base(Shelf shelf) {
        Model model = file == null ? shelf.model(id) : read(file, shelf);
        return new Base(
                model, patches.stream().map(patch -> patch(patch, model, shelf)).toList());
    }

    /** A patch that is unsound by itself is refused at its place in the file; what several do together has no place. */
    private static Patch patch(String stated, Model base, Shelf shelf) {
        if (!isFile(stated)) {
            return shelf.patch(stated);
        }
        Path path = Path.of(stated);
        return reading(path, reader -> reader.readPatch(Source.of(path), base));
    }

    /** An id is no path; a path is there, or looks like one. */
    static boolean isFile(String patch) {
        return patch.endsWith(".json") || patch.contains("/") || patch.contains("\\") || Files.exists(Path.of(patch));
    }

    private Model read(Path path, Shelf shelf) {
        List<Catalogue> known = catalogues(shelf);
        return reading(path, reader -> reader.readModel(Source.of(path), known));
    }

    private List<Catalogue> catalogues(Shelf shelf) {
        List<Catalogue> known = new ArrayList<>();
        for (Path catalogue : catalogues) {
            known.add(reading(catalogue, reader -> reader.readCatalogue(Source.of(catalogue))));
        }
        known.addAll(shelf.catalogues());
        return known;
    }

    private static <T> T reading(Path path, Function<DocumentReader, T> read) {
        try {
            return read.apply(Documents.reader());
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(path.toString(), e.problems()));
        }
    }
}
