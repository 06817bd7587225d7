package org.geneticsrules.answer;

import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.function.Supplier;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;

/**
 * A model of the same traits that somebody holds instead, and that is asked the same questions.
 *
 * <p>Thread-safe. The model is made and compiled when it is first asked, once.
 */
public final class RivalModel {

    private final String title;
    private final Supplier<Model> base;
    private final ImmutableList<Patch> patches;
    private final Supplier<Model> model;
    private final Supplier<CompiledModel> compiled;

    private RivalModel(String title, Supplier<Model> base, List<Patch> patches, Supplier<Model> model) {
        this.title = title;
        this.base = base;
        this.patches = ImmutableList.copyOf(patches);
        this.model = model;
        this.compiled = Suppliers.memoize(() -> CompiledModel.of(model.get()));
    }

    /**
     * Describes a rival.
     *
     * @param title what is held, in a few words
     * @param model makes the model; is called once at most, by whichever thread asks first
     * @return the rival
     */
    public static RivalModel of(String title, Supplier<Model> model) {
        Supplier<Model> once = Suppliers.memoize(model::get);
        return new RivalModel(title, once, List.of(), once);
    }

    /**
     * Describes a rival that is a model with patches.
     *
     * @param title what is held, in a few words
     * @param base the model that is patched
     * @param patches the patches
     * @param model makes the patched model; is called once at most, by whichever thread asks first
     * @return the rival
     */
    public static RivalModel patched(String title, Model base, List<Patch> patches, Supplier<Model> model) {
        return new RivalModel(title, () -> base, patches, Suppliers.memoize(model::get));
    }

    /**
     * Returns the model as it is without patches.
     *
     * @return the model that is patched, or the model itself
     * @throws org.geneticsrules.problem.ProblemsException if it cannot be made
     */
    public Model base() {
        return base.get();
    }

    /**
     * Returns the patches that make the rival of its base.
     *
     * @return patches; none if it is a model of its own, or one of which nobody stated how it was made
     */
    public List<Patch> patches() {
        return patches;
    }

    /**
     * Returns what is held.
     *
     * @return a title in a few words
     */
    public String title() {
        return title;
    }

    /**
     * Returns the model. It is made when it is first asked for.
     *
     * @return the model, not yet compiled
     * @throws org.geneticsrules.problem.ProblemsException if it cannot be made
     */
    public Model model() {
        return model.get();
    }

    /**
     * Returns the model, compiled. It is made when it is first asked for.
     *
     * @return the compiled model
     * @throws org.geneticsrules.problem.ProblemsException if it cannot be made, as a patch on another base cannot
     */
    public CompiledModel compiled() {
        return compiled.get();
    }

    /** Returns the title. */
    @Override
    public String toString() {
        return title;
    }

    /**
     * What a rival says when it is asked.
     *
     * @param verdict its verdict in one sentence
     * @param isAnswer false if it could not tell, for want of frequencies or because it would take too much work
     * @param cautions what has to be said along with it
     */
    public record Opinion(String verdict, boolean isAnswer, Supplier<List<Caution>> cautions) {}
}
