import { Component, type ReactNode } from 'react'

interface DrawingGuardProps {
  readonly onFall: (error: unknown) => void
  readonly children: ReactNode
}

/** The drawing is a tree of its own, whose failures do not reach the page by themselves: they are handed out to it. */
export class DrawingGuard extends Component<DrawingGuardProps, { readonly hasFallen: boolean }> {
  override state = { hasFallen: false }

  static getDerivedStateFromError(): { hasFallen: boolean } {
    return { hasFallen: true }
  }

  override componentDidCatch(error: unknown): void {
    this.props.onFall(error)
  }

  override render(): ReactNode {
    return this.state.hasFallen ? null : this.props.children
  }
}
