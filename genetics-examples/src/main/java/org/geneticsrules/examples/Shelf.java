package org.geneticsrules.examples;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.spi.ModelSource;
import org.geneticsrules.spi.PluginProblem;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.spi.Renewal;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;
import org.jspecify.annotations.Nullable;

/** The models of the plug-ins at hand. */
final class Shelf {

    private static final String DEFAULT_MODEL = "geneticsrules.ferret.common-practice";
    private static final String DEFAULT_PLUGIN = "geneticsrules.ferret";

    /** All plug-ins, read once when first asked for: they do not change while the program runs. */
    private static final class All {
        static final Shelf SHELF = new Shelf(Registry.discover());
    }

    /** The plug-in of the default model alone. */
    private static final class Default {
        static final Shelf SHELF =
                new Shelf(Registry.discover(plugin -> plugin.id().equals(DEFAULT_PLUGIN)));
    }

    private final Registry registry;

    private Shelf(Registry registry) {
        this.registry = registry;
    }

    /** All plug-ins. */
    static Shelf open() {
        return All.SHELF;
    }

    /** Only the plug-in of the default model where that is all that is needed, since every plug-in takes time to read. */
    static Shelf openFor(@Nullable String model) {
        return model == null || model.equals(DEFAULT_MODEL) ? Default.SHELF : open();
    }

    Model model(@Nullable String id) {
        return registry.model(id == null ? DEFAULT_MODEL : id);
    }

    /** Puts the versions that the plug-ins have into a question. */
    Renewal renewal() {
        return Renewal.of(registry);
    }

    Patch patch(String id) {
        return registry.patch(id);
    }

    List<Patch> patches() {
        return registry.patches();
    }

    List<Patch> patches(Model base) {
        return registry.patches(base);
    }

    List<Model> models() {
        return registry.models();
    }

    List<Catalogue> catalogues() {
        return registry.catalogues();
    }

    List<CautionSet> cautions(Model model) {
        return registry.cautions(model);
    }

    List<RivalModel> rivals(Model model) {
        return registry.rivals(model);
    }

    List<Vocabulary> vocabularies(Model model) {
        return registry.vocabularies(model.catalogue());
    }

    /** All vocabularies, whatever traits they speak of. */
    List<Vocabulary> vocabularies() {
        return registry.catalogues().stream()
                .flatMap(catalogue -> registry.vocabularies(catalogue).stream())
                .distinct()
                .toList();
    }

    Optional<String> plugin(Model model) {
        return registry.source(model).map(ModelSource::provider).map(plugin -> plugin.id() + " " + plugin.version());
    }

    List<PluginProblem> problems() {
        return registry.problems();
    }
}
