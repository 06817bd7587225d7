package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says what a buyer or adopter should be told of an animal. */
@Command(
        name = "hand-over",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Says what to tell a buyer or adopter: how the animal looks, what it may carry, what to be careful about.",
        footer = {
            "",
            "Bramble goes to a new home; her head is striped with white, and nobody has tested her hearing:",
            "  genetics hand-over --sex female --traits \"head white, eye colour\" \\",
            "      --look \"head white: narrow stripe, eye colour: dark @ week 60, moult 2\" \\",
            "      --look \"hearing left ear: not tested @ week 60, moult 2\" --moult 2",
            "",
            "Whatever is written here, a veterinarian sees the animal, and the law of the place counts."
        })
final class HandOverCommand implements Callable<Integer> {

    @Mixin
    private OneAnimalOptions animal;

    @Override
    public Integer call() {
        return animal.answer(Answers::handOver);
    }
}
