package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.probability.Probability;

/**
 * A model that takes part in an analysis, with what it was made of, so that it can be made again.
 *
 * <p>Immutable and thread-safe.
 *
 * @param title what it is called among others
 * @param base the model without patches
 * @param patches the patches on it
 * @param model the patched model; the base itself if there are none
 * @param prior its share of belief beforehand, in proportion to those of the others
 * @param fitted how many of its numbers were fitted to the same records
 */
public record HeldModel(String title, Model base, List<Patch> patches, Model model, Probability prior, int fitted) {

    /**
     * Copies the patches.
     *
     * @param title what it is called
     * @param base the model without patches
     * @param patches the patches on it
     * @param model the patched model
     * @param prior its share of belief
     * @param fitted how many numbers were fitted
     * @throws IllegalArgumentException if there are no patches and the model is not the base
     */
    public HeldModel {
        patches = ImmutableList.copyOf(patches);
        if (patches.isEmpty() && !model.equals(base)) {
            throw new IllegalArgumentException(
                    "no patch makes " + model.reference() + " of " + base.reference() + "; expected the base itself");
        }
    }

    /**
     * Returns a model as it is, under its own title.
     *
     * @param model the model
     * @return the model, as much believed in as others
     */
    public static HeldModel of(Model model) {
        return of(model, List.of(), model);
    }

    /**
     * Returns a model with patches; one patch gives its title.
     *
     * @param base the model without patches
     * @param patches the patches on it
     * @param patched what they make of it
     * @return the model, as much believed in as others
     * @throws IllegalArgumentException if there are no patches and the model is not the base
     */
    public static HeldModel of(Model base, List<Patch> patches, Model patched) {
        String title = patches.size() == 1
                ? patches.get(0).title().orElse(patches.get(0).id())
                : patched.title().orElse(patched.id());
        return new HeldModel(title, base, patches, patched, Probability.ONE, 0);
    }

    /**
     * Returns a rival as a model that takes part. It is made if nobody asked for it before.
     *
     * @param rival a rival model
     * @return the model, as much believed in as others
     * @throws org.geneticsrules.problem.ProblemsException if it cannot be made
     */
    public static HeldModel of(RivalModel rival) {
        return new HeldModel(rival.title(), rival.base(), rival.patches(), rival.model(), Probability.ONE, 0);
    }

    /**
     * Returns this model under another title.
     *
     * @param other what to call it
     * @return a copy
     */
    public HeldModel called(String other) {
        return new HeldModel(other, base, patches, model, prior, fitted);
    }

    /**
     * Returns this model with a share of belief.
     *
     * @param share in proportion to those of the others
     * @return a copy
     */
    public HeldModel believed(Probability share) {
        return new HeldModel(title, base, patches, model, share, fitted);
    }

    /**
     * Returns this model with numbers that were fitted to the records it is held against.
     *
     * @param numbers how many, 0 or more
     * @return a copy
     */
    public HeldModel fitted(int numbers) {
        return new HeldModel(title, base, patches, model, prior, numbers);
    }

    /**
     * Returns by what this model is asked for.
     *
     * @return the id of its one patch; else that of the model
     */
    public String id() {
        return patches.size() == 1 ? patches.get(0).id() : model.id();
    }

    /**
     * Returns the model as it is held against others.
     *
     * @return a candidate of this title, compiled anew
     */
    public Candidate candidate() {
        return new Candidate(title, CompiledModel.of(model), prior, fitted);
    }

    /** As it is asked among the rivals at hand. */
    RivalModel rival() {
        return RivalModel.patched(title, base, patches, () -> model);
    }

    /** Returns the title. */
    @Override
    public String toString() {
        return title;
    }
}
